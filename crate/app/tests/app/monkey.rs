//! Thousands of messages at random: nothing ends the program, and what holds goes on holding.
use gearswing_app::msg::{self, Direction, Modifiers, Msg, Pointer, PointerKind, Times};
use gearswing_app::scene::ScreenPoint;
use gearswing_app::state::{Speed, Theme};
use gearswing_app::{curves, drawing, times as times_drawn, view};
use gearswing_solver::result::Question;
use gearswing_units::{StepSize, UnitChoice};
use proptest::prelude::*;

use crate::scenes::check;
use crate::support::Desk;

fn point() -> impl Strategy<Value = ScreenPoint> {
    let wild = prop_oneof![
        20 => 0.0..640.0_f64,
        1 => prop::sample::select(vec![f64::NAN, f64::INFINITY, -1e9, 1e300]),
    ];
    (wild.clone(), wild).prop_map(|(x_px, y_px)| ScreenPoint { x_px, y_px })
}

fn path() -> impl Strategy<Value = String> {
    prop::sample::select(vec![
        "name",
        "note",
        "legs[0]",
        "legs[9]",
        "legs[2].well",
        "legs[2].well[1]",
        "legs[0].brace",
        "legs[2].trunnion_m",
        "legs[2].trunnion_m[0]",
        "legs[1].brace.folding.knee_m",
        "legs[0].actuator.attach_m",
        "legs[2].actuator.bore_m",
        "legs[2].actuator.rod_m",
        "legs[2].wheel.tire.diameter_m",
        "legs[2].wheel.tire.circumference_m",
        "legs[2].wheel.tire.grown",
        "legs[1].strut.shortening",
        "legs[0].strut.shortening.with_travel.table",
        "legs[0].swing_up_rad",
        "legs[1].view",
        "legs[0].body.outline_m",
        "legs[0].body.outline_m[1]",
        "legs[2].well[0].shape",
        "legs[2].well[0].shape.solid.points_m[1]",
        "legs[2].well[0].shape.solid.points_m[1][1]",
        "legs[2].well[0].required_clearance_m",
        "legs[2].well[0].ignores",
        "legs[2].seen_stop",
        "legs[2].seen_stop.how_far.travel.travel",
        "legs[2].seen_stop.how_far.axle_from.from_m[0]",
        "legs[2].seen_stop.gauge_pa",
        "supply.margin_wanted",
        "legs[1].actuator.attach_to",
        "legs[1].wheel.tire.size_table",
        "",
        "[",
        "legs[1].nothing",
        "legs[2].springs",
        "legs[2].springs[0]",
        "legs[2].springs[0].kind",
        "legs[2].springs[1].kind.linear.first.point_m",
        "legs[2].springs[1].kind.linear.second.body",
        "legs[2].springs[1].kind.linear.rate_n_m",
        "legs[2].pins.knee.radius_m",
        "legs[2].pins.knee.friction",
        "legs[0].drive.orifice_up.hole_m",
        "legs[0].drive.stage_valve_pa",
        "legs[0].drive.start_travel",
        "supply.source",
        "supply.source.motor_pump.free_flow_m3_s",
        "supply.battery.open_circuit_v",
        "supply.battery.internal_ohm",
        "supply.accumulator.gas_volume_m3",
    ])
    .prop_map(str::to_owned)
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        prop::sample::select(vec![
            "3/8", "1 1/2 in", "-2", "0", "9.5 mm", "x", "", "1e9", "40 deg", "1200 psi", "0.0001",
            "100",
        ])
        .prop_map(str::to_owned),
        ".{0,12}",
    ]
}

fn option() -> impl Strategy<Value = String> {
    prop::sample::select(vec![
        "none",
        "folding",
        "sliding",
        "travel",
        "axle_from",
        "before_swing",
        "with_travel",
        "given",
        "by_rule",
        "solid",
        "surface",
        "side",
        "front",
        "leg",
        "upper_link",
        "lower_link",
        "wheel",
        "3",
        "linear",
        "gas",
        "torsion",
        "motor_pump",
        "hand_pump",
        "electric_actuators",
        "constant_pressure",
        "junk",
    ])
    .prop_map(str::to_owned)
}

fn size() -> impl Strategy<Value = StepSize> {
    prop::sample::select(vec![StepSize::Fine, StepSize::Normal, StepSize::Coarse])
}

fn pointer() -> impl Strategy<Value = Msg> {
    let kind = prop::sample::select(vec![
        PointerKind::Mouse,
        PointerKind::Touch,
        PointerKind::Pen,
    ]);
    (0..6u8, 0..3i32, kind, point(), any::<bool>(), -3.0..3.0_f64).prop_map(
        |(what, id, kind, at, ctrl, amount)| {
            let modifiers = Modifiers {
                ctrl,
                ..Modifiers::default()
            };
            Msg::Pointer(match what {
                0 => Pointer::Down {
                    id,
                    kind,
                    at,
                    modifiers,
                },
                1 | 2 => Pointer::Move {
                    id,
                    kind,
                    at,
                    modifiers,
                },
                3 => Pointer::Up { id, at },
                4 => Pointer::Wheel {
                    at,
                    delta_px: 100.0 * amount,
                },
                _ => Pointer::Pinch { at, factor: amount },
            })
        },
    )
}

fn field() -> impl Strategy<Value = Msg> {
    (0..10u8, path(), text(), option(), any::<bool>(), size()).prop_map(
        |(what, path, text, option, on, size)| {
            Msg::Field(match what {
                0 => msg::Field::Focus { path },
                1 | 2 => msg::Field::Draft { path, text },
                3 | 4 => msg::Field::Commit { path },
                5 => msg::Field::Revert { path },
                6 => msg::Field::Step { path, up: on, size },
                7 => msg::Field::Choose { path, option },
                8 if on => msg::Field::Switch { path, option, on },
                8 => msg::Field::Add { path },
                _ if on => msg::Field::Remove { path },
                _ => msg::Field::Show { path },
            })
        },
    )
}

fn other() -> impl Strategy<Value = Msg> {
    let question = prop::sample::select(vec![Question::Clears, Question::Driven, Question::Locks]);
    let direction = prop::sample::select(vec![Direction::Left, Direction::Right, Direction::Up]);
    (
        0..24u8,
        path(),
        text(),
        0..4usize,
        -3.0..3.0_f64,
        (question, direction, size()),
    )
        .prop_map(
            |(what, path, text, leg, amount, (question, direction, size))| match what {
                0 => Msg::View(msg::View::SelectLeg { leg }),
                1 => Msg::View(msg::View::GoTo { leg, question }),
                2 => Msg::View(msg::View::Fit),
                3 => Msg::View(msg::View::Zoom { factor: amount }),
                4 => Msg::View(msg::View::Units(if leg == 0 {
                    UnitChoice::METRIC
                } else {
                    UnitChoice::INCH
                })),
                5 => Msg::View(msg::View::Theme(Theme::Dark)),
                6 => Msg::Field(msg::Field::KeepTire { leg }),
                7 => Msg::View(msg::View::ToggleGroup {
                    id: "wheel".to_owned(),
                }),
                8 => Msg::View(msg::View::DrawingSize {
                    width_px: 300.0 * amount,
                    height_px: 500.0,
                }),
                9 => Msg::View(msg::View::CurvesSize {
                    width_px: 300.0 * amount,
                }),
                10 => Msg::Play(msg::Play::Toggle),
                11 => Msg::Play(msg::Play::Scrub { progress: amount }),
                12 => Msg::Frame {
                    time_s: 10.0 * amount,
                },
                13 | 14 => Msg::History(msg::History::Undo),
                15 => Msg::History(msg::History::Redo),
                16 => Msg::Key(msg::Key::Nudge {
                    handle: path,
                    direction,
                    size,
                }),
                17 => Msg::Key(msg::Key::Escape),
                18 => Msg::Play(msg::Play::Speed(Speed::Fast)),
                19 => Msg::File(msg::File::ImportText { name: path, text }),
                20 => Msg::Share(msg::Share::OpenLink { text }),
                22 => Msg::View(msg::View::GoToStop { leg }),
                21 => Msg::View(msg::View::Loads { on: leg != 3 }),
                _ => Msg::File(match leg {
                    0 => msg::File::Duplicate,
                    1 => msg::File::Delete {
                        id: format!("g{}", amount.abs() as u8),
                    },
                    2 => msg::File::BringBack,
                    _ => msg::File::Open {
                        id: format!("g{}", amount.abs() as u8),
                    },
                }),
            },
        )
}

fn times() -> impl Strategy<Value = Msg> {
    (0..5u8, point(), -2.0..12.0_f64, any::<bool>()).prop_map(|(what, at, time_s, down)| {
        Msg::Times(match what {
            0 => Times::Scrub { at },
            1 => Times::Seek { time_s },
            2 => Times::Seek { time_s: f64::NAN },
            3 => Times::Select { down },
            _ => Times::Toggle,
        })
    })
}

fn any_msg() -> impl Strategy<Value = Msg> {
    prop_oneof![3 => pointer(), 3 => field(), 3 => other(), 1 => times()]
}

fn holds(desk: &Desk) {
    let gear = desk.state.gear();
    // what is stored can always be read back: no number that is not finite ever came in
    let text = gearswing_gearfile::to_text(gear).unwrap();
    assert_eq!(gearswing_gearfile::read(&text).unwrap(), *gear);
    assert!(desk.state.session.leg < gear.legs.len());
    assert!(desk.state.session.progress.is_finite());
    let page = view(&desk.state);
    assert_eq!(page.answers.len(), gear.legs.len());
    assert!(page.groups.iter().filter(|group| group.open).count() <= 1);
    assert!((page.transport.min..=page.transport.max).contains(&page.transport.value));
    check(&drawing(&desk.state));
    check(&curves(&desk.state));
    check(&times_drawn(&desk.state));
    assert!((0.0..=page.times.end_s).contains(&page.times.value_s));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, max_shrink_iters: 200, ..ProptestConfig::default() })]

    #[test]
    fn nothing_ends_the_program(msgs in prop::collection::vec(any_msg(), 1..120)) {
        let mut desk = Desk::demo();
        for (at, msg) in msgs.into_iter().enumerate() {
            desk.send(msg);
            if at % 8 == 0 {
                holds(&desk);
            }
        }
        holds(&desk);
    }
}
