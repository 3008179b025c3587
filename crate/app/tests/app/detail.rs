//! What the details show is held against plane geometry from the file's own points.
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::{Role, Shape};
use gearswing_app::{Question, detail, drawing};
use gearswing_gear::model::{Brace, Point};
use gearswing_solver::kinematics::Linkage;
use gearswing_solver::{Options, solve_leg};
use gearswing_units::{Quantity, UnitChoice, format};

use crate::support::Desk;

/// Distance of a point from the line through two others, by the area of their triangle.
fn off_line(from: Point, a: Point, b: Point) -> f64 {
    ((b - a).perp(&(from - a)) / (b - a).norm()).abs()
}

fn at_answer(leg: usize, question: Question) -> Desk {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::DrawingSize {
        width_px: 900.0,
        height_px: 700.0,
    }));
    desk.send(Msg::View(msg::View::GoTo { leg, question }));
    desk.send(Msg::View(msg::View::Fit));
    desk
}

/// Letters that stand bold in the drawing.
fn letters(desk: &Desk) -> Vec<String> {
    let marks = drawing(&desk.state).marks.into_iter();
    marks
        .filter(|mark| mark.role == Role::Governing)
        .filter_map(|mark| match mark.shape {
            Shape::Text { text, .. } if text.len() == 1 => Some(text),
            _ => None,
        })
        .collect()
}

#[test]
fn the_detail_goes_with_the_answer() {
    for leg in 0..3 {
        for (question, letter) in [
            (Question::Clears, "A"),
            (Question::Driven, "C"),
            (Question::Locks, "B"),
        ] {
            let desk = at_answer(leg, question);
            let told = desk.page().drawing.detail.unwrap();
            let starts = format!("{letter}, ");
            assert!(told.caption.starts_with(&starts), "{told:?}");
            assert_eq!(told.question, question);
            assert_eq!(letters(&desk), [letter]);
            let marks = detail(&desk.state).marks;
            assert!(marks.iter().any(|mark| mark.role == Role::Moving));
        }
    }
}

#[test]
fn the_knee_is_as_far_off_the_line_as_the_detail_says() {
    for leg in 0..3 {
        let desk = at_answer(leg, Question::Locks);
        let Brace::Folding(brace) = &desk.state.gear().legs[leg].brace else {
            panic!("the demo's braces fold");
        };
        let off = off_line(brace.knee, brace.airframe_pivot, brace.leg_attach);
        let told = desk.page().drawing.detail.unwrap();
        let value = format(Quantity::Length, UnitChoice::default(), off);
        assert!(told.value.starts_with(&value), "{told:?} is not {value}");
    }
}

/// The arm of an actuator on the leg is what its length changes by for each radian (virtual work), that on a link
/// the same for the turn of the link.
#[test]
fn the_arm_is_that_of_virtual_work() {
    for leg in 0..3 {
        let desk = at_answer(leg, Question::Driven);
        let model = &desk.state.gear().legs[leg];
        let linkage = Linkage::new(model);
        let peak = solve_leg(desk.state.gear(), leg, &Options::default())
            .unwrap()
            .force
            .peak
            .unwrap();
        let pose = linkage.pose(peak.place.progress).unwrap();
        let rates = pose.rates;
        let turn = match model.actuator.attach_to {
            gearswing_gear::model::AttachTo::Leg => rates.swing,
            _ => rates.upper,
        };
        let arm = (rates.actuator / turn).abs();
        let value = format(Quantity::Length, UnitChoice::default(), arm);
        let told = desk.page().drawing.detail.unwrap();
        assert!(told.value.contains(&value), "{told:?} is not {value}");
    }
}
