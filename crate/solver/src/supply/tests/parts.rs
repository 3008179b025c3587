//! Orifice, battery, motor line, curve.
use super::super::curve::Curve;
use super::super::open_circuit_voltage;
use crate::hydraulics::{Line, Pump, conductance, flow};
use crate::model::{Battery, BatteryKind, BatterySize, LineOrifice, MotorPump, Source, Supply};
use crate::statics::STANDARD_GRAVITY;

#[test]
fn orifice_under_three_metres_of_water() {
    // Worked case: Cd 0.62, d 50 mm, head 3 m → 0.00934 m3/s (ajdesigner.com/orifice-flow).
    let hole = LineOrifice {
        hole: 0.05,
        discharge: 0.62,
    };
    let found = flow(conductance(&hole, 1000.0), 1000.0 * STANDARD_GRAVITY * 3.0);
    assert!((found - 0.009_34).abs() < 5e-6, "{found}");
}

#[test]
fn small_restrictor() {
    // Cd 0.61, 1.0 mm, 7 MPa, 860 kg/m3 → 3.668 L/min (the textbook formula worked by hand).
    let hole = LineOrifice {
        hole: 1e-3,
        discharge: 0.61,
    };
    let found = flow(conductance(&hole, 860.0), 7e6) * 60e3;
    assert!((found - 3.668).abs() < 5e-4, "{found}");
    assert_eq!(flow(conductance(&hole, 860.0), -7e6), 0.0);
}

#[test]
fn battery_voltage_by_charge() {
    // Flooded: rule of thumb (lists.ettus.com); glass mat: from memory.
    for (kind, table) in [
        (
            BatteryKind::Flooded,
            [
                (0.0, 11.6),
                (0.25, 12.0),
                (0.5, 12.2),
                (0.75, 12.4),
                (1.0, 12.6),
            ],
        ),
        (
            BatteryKind::GlassMat,
            [
                (0.25, 12.0),
                (0.375, 12.2),
                (0.5, 12.4),
                (0.75, 12.7),
                (1.0, 12.9),
            ],
        ),
    ] {
        for (charge, volts) in table {
            let mut battery = Battery {
                kind,
                charge,
                ..Battery::default()
            };
            assert!((open_circuit_voltage(&battery) - volts).abs() < 1e-12);
            battery.size = BatterySize::Volt24;
            assert!((open_circuit_voltage(&battery) - 2.0 * volts).abs() < 1e-12);
            battery.open_circuit_voltage = Some(13.8);
            assert_eq!(open_circuit_voltage(&battery), 13.8);
        }
    }
}

#[test]
fn motor_line_at_2500_rpm() {
    // 12 V, no-load 3800 rpm, stall 30 mN·m; at 2500 rpm: 10.263 mN·m and 0.34034 A
    // (homeworklib.com/question/1976071, its outputs worked out with V = IR + Kω, T = KI).
    let per_rad = 1e-8;
    let rpm = std::f64::consts::TAU / 60.0;
    let resistance = 12.062;
    let pump = MotorPump {
        free_flow: 3800.0 * rpm * per_rad,
        rated_voltage: 12.0,
        stall_pressure: 0.030 / per_rad,
        no_load_current: 0.0,
        stall_current: 12.0 / resistance,
        relief_pressure: 1e9,
    };
    let mut supply = Supply::constant(1e6);
    supply.source = Source::MotorPump(pump);
    supply.battery.open_circuit_voltage = Some(12.0);
    supply.battery.internal_resistance = 0.0;
    let line = Pump::new(&supply).unwrap().unwrap();
    let pressure = 10.263e-3 / per_rad;
    let speed = line.flow(pressure).unwrap() / per_rad / rpm;
    assert!((speed - 2500.0).abs() < 0.1, "{speed}");
    let current = line.motor.unwrap().current(pressure);
    assert!((current - 0.340_34).abs() < 2e-5, "{current}");
}

#[test]
fn resistance_in_the_wires_takes_what_ohms_law_says() {
    // V = E − I·R at the working point, and the bus stands higher by the wires' own drop.
    let mut supply = gearswing_samples::pack::gear().supply;
    supply.battery.open_circuit_voltage = Some(12.4);
    supply.battery.internal_resistance = 0.02;
    supply.battery.wire_resistance = 0.03;
    let Source::MotorPump(own) = supply.source else {
        panic!()
    };
    let line = Pump::new(&supply).unwrap().unwrap();
    for pressure in [0.0, 2e6, 3e6] {
        let share = pressure / own.stall_pressure;
        let current = own.no_load_current + (own.stall_current - own.no_load_current) * share;
        let volts = 12.4 - current * 0.05;
        let by_hand = own.free_flow * (volts / own.rated_voltage - share);
        let motor = line.motor.unwrap();
        assert!((line.flow(pressure).unwrap() - by_hand).abs() < 1e-12 * own.free_flow);
        assert!(
            (motor.circuit().bus(motor.current(pressure)) - (volts + 0.03 * current)).abs() < 1e-9
        );
    }
}

#[test]
fn curve_keeps_between_its_points() {
    let curve = Curve::new([(0.0, 1.0), (1.0, 3.0), (1.0, 9.0), (2.0, 3.5), (4.0, 0.0)]);
    assert_eq!(curve.value(-1.0), 1.0);
    assert_eq!(curve.value(9.0), 0.0);
    assert_eq!(curve.value(1.0), 3.0);
    for step in 0..=400 {
        let x = f64::from(step) / 100.0;
        let y = curve.value(x);
        let (low, high) = match x {
            x if x <= 1.0 => (1.0, 3.0),
            x if x <= 2.0 => (3.0, 3.5),
            _ => (0.0, 3.5),
        };
        assert!((low - 1e-12..=high + 1e-12).contains(&y), "{x} {y}");
    }
    assert_eq!(curve.peak_from(0.5), (2.0, 3.5));
    assert_eq!(curve.peak_from(3.0).0, 3.0);
}

/// Through points of a parabola the slope at both ends is the parabola's own (three points make it).
#[test]
fn curve_ends_with_the_slope_of_a_parabola() {
    let parabola = |x: f64| 3.0 + 2.0 * x + x * x;
    let places = [0.0, 0.3, 0.5, 1.1, 1.2];
    let curve = Curve::new(places.map(|x| (x, parabola(x))));
    let step = 1e-6;
    let slope = |from: f64| (curve.value(from + step) - curve.value(from)) / step;
    assert!((slope(0.0) - 2.0).abs() < 1e-5);
    assert!((slope(1.2 - step) - 4.4).abs() < 1e-5);
    // Two points make a straight line, and a turn is held level.
    let line = Curve::new([(0.0, 1.0), (2.0, 5.0)]);
    assert!((line.value(0.5) - 2.0).abs() < 1e-12);
    let turn = Curve::new([(0.0, 0.0), (1.0, 0.1), (2.0, 9.0)]);
    assert!((0..=100).all(|i| (0.0..=0.1).contains(&turn.value(f64::from(i) / 100.0))));
}

/// Half-way down a straight line from 5 to 1 the value is 3; a curve that starts below is so at its start.
#[test]
fn a_curve_is_first_below_where_it_crosses() {
    let line = Curve::new([(0.0, 5.0), (2.0, 1.0)]);
    for (level, place) in [(3.0, 1.0), (2.0, 1.5), (4.5, 0.25)] {
        let found = line.first_below(level).unwrap();
        assert!((found - place).abs() < 1e-12, "{level} {found}");
    }
    assert_eq!(line.first_below(6.0), Some(0.0));
    assert_eq!(line.first_below(1.0), None);
}

/// d(c·√Δp)/dΔp = c/(2√Δp) well above the laminar flow; through a ratio r the flow is r·c·√(r·Δp), and its slope
/// r²·c/(2√(r·Δp)). Nothing flows back, and so has no slope, but where it may.
#[test]
fn slope_of_a_line_by_hand() {
    let line = Line {
        conductance: 2e-9,
        ratio: 4.0,
        both_ways: false,
    };
    let exact = 16.0 * 2e-9 / (2.0 * 4e6_f64.sqrt());
    let slope = line.slope(1e6);
    assert!((slope / exact - 1.0).abs() < 1e-6, "{slope} {exact}");
    assert_eq!(line.slope(-1e6), 0.0);
    let back = Line {
        both_ways: true,
        ..line
    };
    assert_eq!(back.slope(-1e6), slope);
    // and by differences where it goes over to laminar
    for spare in [50.0, 250.0, 1e3] {
        let step = 1e-3;
        let by_difference = (line.flow(spare + step) - line.flow(spare - step)) / (2.0 * step);
        assert!((line.slope(spare) / by_difference - 1.0).abs() < 1e-6);
    }
}
