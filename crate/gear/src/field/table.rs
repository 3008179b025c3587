//! The list of fields: one row for each number, text and choice of a gear file.
//!
//! A row has the field's name here, its key in the file with every index left out, what it holds, the
//! group it is shown in, what kind of change it is, and the place in the model where it stands.
//! What it holds: `number` (quantity, range, and behind `=` what an empty one counts as), `option` (may
//! be left out), `opens` (the first number of a part that may be left out as a whole), `point`,
//! `outline` (a list of points), `text`, `choice` and `set` (keys of the options). `@2` before a row: the
//! version of the gear file that has it first, where it is not as old as the file.
use super::choice;
use super::info::{Access, Class, Empty, Group, Info, Kind, Mut, Ref, Via};
use super::range as r;
use crate::model::{
    Brace, DEFAULT_EXPONENT, DEFAULT_INTERNAL_RESISTANCE, GasLaw, GasSpring, Grown, HowFar,
    LinearSpring, MINERAL_FLUID_DENSITY, SHARP_EDGE, SeenStop, Shape, Shortening, Source,
    SpringKind, SpringSet,
};
use gearswing_units::Quantity;
use gearswing_units::factors::{M_PER_INCH, N_PER_LBF, PA_PER_PSI, RAD_PER_DEG};

/// A sixteenth of an inch (m).
const SIXTEENTH: f64 = M_PER_INCH / 16.0;
fields! {
    of Gear |g| {
        GearName "name" (text) File (measured) { g.name }
        GearNote "note" (text) File (measured) { g.note }
        @5 PointsFrom "points_from" (choice points_from) File (measured) {}
        LoadFactor "conditions.load_factor" (number LoadFactor LOAD_FACTOR) Conditions (measured) { g.conditions.load_factor }
        Pitch "conditions.pitch_rad" (number Angle TILT) Conditions (measured) { g.conditions.pitch }
        Bank "conditions.bank_rad" (number Angle BANK) Conditions (measured) { g.conditions.bank }
        Airspeed "conditions.airspeed_m_s" (number Speed AIRSPEED) Conditions (measured) { g.conditions.airspeed }
        Sideslip "conditions.sideslip_rad" (number Angle TILT) Conditions (measured) { g.conditions.sideslip }
        AirDensity "conditions.air_density_kg_m3" (number Density DENSITY) Conditions (measured) { g.conditions.air_density }
        GearSpeed "conditions.gear_speed_m_s" (option Speed AIRSPEED) Conditions (requirement) { g.conditions.gear_speed }
        StallSpeed "conditions.stall_speed_m_s" (option Speed STALL_SPEED) Conditions (measured) { g.conditions.stall_speed }
        ClimbPitch "conditions.climb_pitch_rad" (option Angle TILT) Conditions (requirement) { g.conditions.climb_pitch }
        TurnLoadFactor "conditions.turn_load_factor" (option LoadFactor LOAD_FACTOR) Conditions (requirement) { g.conditions.turn_load_factor }
        AvailablePressure "supply.available_pressure_pa" (number Pressure PRESSURE) Supply (adjustment 25.0 * PA_PER_PSI) { g.supply.available_pressure }
        ReturnPressure "supply.return_pressure_pa" (number Pressure BACK_PRESSURE = 0.0) Supply (measured) { g.supply.return_pressure }
        MarginWanted "supply.margin_wanted" (option Travel MARGIN) Supply (requirement) { g.supply.margin_wanted }
        SupplySource "supply.source" (choice ["constant_pressure", "motor_pump", "hand_pump", "electric_actuators"]) Supply (part) {}
        PumpFreeFlow "supply.source.motor_pump.free_flow_m3_s" (number Flow FLOW) Supply (measured) { Source::MotorPump(p) = g.supply.source => p.free_flow }
        PumpRatedVoltage "supply.source.motor_pump.rated_v" (number Voltage VOLTAGE) Supply (measured) { Source::MotorPump(p) = g.supply.source => p.rated_voltage }
        PumpStallPressure "supply.source.motor_pump.stall_pressure_pa" (number Pressure PRESSURE) Supply (part 25.0 * PA_PER_PSI) { Source::MotorPump(p) = g.supply.source => p.stall_pressure }
        PumpIdleCurrent "supply.source.motor_pump.idle_a" (number Current IDLE_CURRENT) Supply (measured) { Source::MotorPump(p) = g.supply.source => p.no_load_current }
        PumpStallCurrent "supply.source.motor_pump.stall_a" (number Current CURRENT) Supply (measured) { Source::MotorPump(p) = g.supply.source => p.stall_current }
        ReliefPressure "supply.source.motor_pump.relief_pressure_pa" (number Pressure PRESSURE) Supply (adjustment 25.0 * PA_PER_PSI) { Source::MotorPump(p) = g.supply.source => p.relief_pressure }
        StrokeVolume "supply.source.hand_pump.stroke_volume_m3" (number Volume STROKE_VOLUME) Supply (measured) { Source::HandPump(p) = g.supply.source => p.stroke_volume }
        StrokeTime "supply.source.hand_pump.stroke_time_s" (number Time STROKE_TIME) Supply (measured) { Source::HandPump(p) = g.supply.source => p.stroke_time }
        HandPumpPressure "supply.source.hand_pump.largest_pressure_pa" (number Pressure PRESSURE) Supply (measured) { Source::HandPump(p) = g.supply.source => p.largest_pressure }
        PressureSwitch "supply.pressure_switch_pa" (option Pressure PRESSURE) Supply (adjustment 25.0 * PA_PER_PSI) { g.supply.pressure_switch }
        @2 AvailableDown "supply.available_down_pa" (option Pressure PRESSURE) Supply (adjustment 25.0 * PA_PER_PSI) { g.supply.available_down }
        @2 ReliefDown "supply.relief_down_pa" (option Pressure PRESSURE) Supply (adjustment 25.0 * PA_PER_PSI) { g.supply.relief_down }
        @2 PressureSwitchDown "supply.pressure_switch_down_pa" (option Pressure PRESSURE) Supply (adjustment 25.0 * PA_PER_PSI) { g.supply.pressure_switch_down }
        BatteryType "supply.battery.kind" (choice battery_kind) Battery (part) {}
        BatteryVoltage "supply.battery.size" (choice battery_size) Battery (part) {}
        BatteryCharge "supply.battery.charge" (number Travel TRAVEL = 1.0) Battery (measured) { g.supply.battery.charge }
        OpenCircuitVoltage "supply.battery.open_circuit_v" (option Voltage VOLTAGE) Battery (measured) { g.supply.battery.open_circuit_voltage }
        InternalResistance "supply.battery.internal_ohm" (number Resistance RESISTANCE = DEFAULT_INTERNAL_RESISTANCE) Battery (part 0.001) { g.supply.battery.internal_resistance }
        WireResistance "supply.battery.wires_ohm" (number Resistance RESISTANCE = 0.0) Battery (part 0.001) { g.supply.battery.wire_resistance }
        BreakerRating "supply.battery.breaker_a" (option Current CURRENT) Battery (part 5.0) { g.supply.battery.breaker_rating }
        GasVolume "supply.accumulator.gas_volume_m3" (opens Volume GAS_VOLUME) Accumulator (part 1e-5) { Some(a) = g.supply.accumulator => a.gas_volume }
        Precharge "supply.accumulator.precharge_pa" (number Pressure PRESSURE) Accumulator (adjustment 25.0 * PA_PER_PSI) { Some(a) = g.supply.accumulator => a.precharge }
        ChargedPressure "supply.accumulator.charged_pa" (number Pressure PRESSURE) Accumulator (adjustment 25.0 * PA_PER_PSI) { Some(a) = g.supply.accumulator => a.charged }
        GasExponent "supply.accumulator.exponent" (number Ratio EXPONENT = DEFAULT_EXPONENT) Accumulator (measured) { Some(a) = g.supply.accumulator => a.exponent }
        FluidDensity "fluid.density_kg_m3" (number Density FLUID_DENSITY = MINERAL_FLUID_DENSITY) Supply (measured) { g.fluid.density }
        @2 EmergencyWay "emergency_way" (choice way_down) Supply (requirement) {}
        @2 EmergencyPump "emergency_pump_pa" (option Pressure PRESSURE) Supply (measured) { g.emergency_pump }
        @2 FrictionTimesRequired "friction_times_required" (option Ratio FRICTION_TIMES) Supply (requirement) { g.friction_times_required }
        ClearanceNew "clearance_rule.tire_new_m" (option Length CLEARANCE) Clearance (requirement) { g.clearance_rule.tire_new }
        ClearanceGrown "clearance_rule.tire_grown_m" (option Length CLEARANCE) Clearance (requirement) { g.clearance_rule.tire_grown }
        ClearanceParts "clearance_rule.parts_m" (option Length CLEARANCE) Clearance (requirement) { g.clearance_rule.parts }
    }
    of Leg |l| {
        LegName "legs[].name" (text) Leg (measured) { l.name }
        View "legs[].view" (choice view) Leg (measured) {}
        @2 TrunnionSkew "legs[].out_of_plane.trunnion_skew_rad" (option Angle SKEW) Leg (measured) { l.out_of_plane.trunnion_skew }
        @2 WheelSkew "legs[].out_of_plane.wheel_skew_rad" (option Angle SKEW) Leg (measured) { l.out_of_plane.wheel_skew }
        @2 RoomNear "legs[].out_of_plane.room_near_m" (option Length SIZE_OR_NONE) Leg (measured) { l.out_of_plane.room_near }
        @2 RoomFar "legs[].out_of_plane.room_far_m" (option Length SIZE_OR_NONE) Leg (measured) { l.out_of_plane.room_far }
        @2 OwnLeg "legs[].out_of_plane.own_leg" (choice own_leg) Leg (measured) {}
        Trunnion "legs[].trunnion_m" (point) Leg (structure SIXTEENTH) { l.trunnion }
        SwingUp "legs[].swing_up_rad" (number Angle SWING) Leg (adjustment RAD_PER_DEG) { l.swing_up }
        BodyMass "legs[].body.mass_kg" (number Mass MASS) Leg (measured) { l.body.mass }
        BodyCenter "legs[].body.centre_m" (point) Leg (measured) { l.body.centre }
        BodyOutline "legs[].body.outline_m[]" (outline) Leg (measured) { l.body.outline }
        Axle "legs[].strut.axle_m" (point) Strut (structure SIXTEENTH) { l.strut.axle }
        AxisBottom "legs[].strut.axis_bottom_m" (point) Strut (measured) { l.strut.axis_bottom }
        AxisTop "legs[].strut.axis_top_m" (point) Strut (measured) { l.strut.axis_top }
        SlidingOutline "legs[].strut.sliding_outline_m[]" (outline) Strut (measured) { l.strut.sliding_outline }
        Shortening "legs[].strut.shortening" (choice ["none", "before_swing", "with_travel"]) Strut (structure) {}
        ShorteningAmount "legs[].strut.shortening.before_swing.amount_m" (number Length SIZE_OR_NONE) Strut (adjustment SIXTEENTH) { Shortening::BeforeSwing { amount } = l.strut.shortening => *amount }
    }
    of Row |r| {
        RowTravel "legs[].strut.shortening.with_travel.table[].travel" (number Travel TRAVEL) Strut (measured) { r.travel }
        RowAmount "legs[].strut.shortening.with_travel.table[].amount_m" (number Length SIZE_OR_NONE) Strut (structure SIXTEENTH) { r.amount }
    }
    of Leg |l| {
        WheelMass "legs[].wheel.mass_kg" (number Mass MASS) Wheel (measured) { l.wheel.mass }
        WheelLean "legs[].wheel.lean_rad" (number Angle LEAN = 0.0) Wheel (structure RAD_PER_DEG) { l.wheel.lean }
        TireSize "legs[].wheel.tire.size" (text) Wheel (measured) { l.wheel.tire.size }
        TireDiameter "legs[].wheel.tire.diameter_m" (number Length SIZE) Wheel (part SIXTEENTH) { l.wheel.tire.diameter }
        TireWidth "legs[].wheel.tire.width_m" (number Length SIZE) Wheel (part SIXTEENTH) { l.wheel.tire.width }
        TireShoulder "legs[].wheel.tire.shoulder_radius_m" (number Length SIZE_OR_NONE) Wheel (measured) { l.wheel.tire.shoulder_radius }
        TireRim "legs[].wheel.tire.rim_diameter_m" (number Length SIZE) Wheel (measured) { l.wheel.tire.rim_diameter }
        TireBasis "legs[].wheel.tire.basis" (choice basis) Wheel (measured) {}
        TireGrown "legs[].wheel.tire.grown" (choice ["by_rule", "given"]) Wheel (measured) {}
        TireGrownDiameter "legs[].wheel.tire.grown.given.diameter_m" (number Length SIZE) Wheel (measured) { Grown::Given { diameter, .. } = l.wheel.tire.grown => *diameter }
        TireGrownWidth "legs[].wheel.tire.grown.given.width_m" (number Length SIZE) Wheel (measured) { Grown::Given { width, .. } = l.wheel.tire.grown => *width }
        TireGrownBasis "legs[].wheel.tire.grown.given.basis" (choice basis) Wheel (measured) {}
        BraceType "legs[].brace" (choice ["none", "folding", "sliding"]) Brace (structure) {}
        BracePivot "legs[].brace.folding.airframe_pivot_m" (point) Brace (structure SIXTEENTH) { Brace::Folding(b) = l.brace => b.airframe_pivot }
        @5 KneeGiven "legs[].brace.folding.knee_given" (choice knee_given) Brace (measured) {}
        Knee "legs[].brace.folding.knee_m" (point) Brace (structure SIXTEENTH) { Brace::Folding(b) = l.brace => b.knee }
        BraceAttach "legs[].brace.folding.leg_attach_m" (point) Brace (structure SIXTEENTH) { Brace::Folding(b) = l.brace => b.leg_attach }
        Folds "legs[].brace.folding.folds" (choice folds) Brace (structure) {}
        UnlockedBy "legs[].brace.folding.unlocked_by" (choice unlocked) Brace (structure) {}
        ExcursionAllowed "legs[].brace.folding.excursion_allowed_m" (option Length SIZE_OR_NONE) Brace (requirement) { Brace::Folding(b) = l.brace => b.excursion_allowed }
        UpperThickness "legs[].brace.folding.upper.thickness_m" (number Length SIZE) Brace (part SIXTEENTH) { Brace::Folding(b) = l.brace => b.upper.thickness }
        UpperMass "legs[].brace.folding.upper.mass_kg" (number Mass MASS = 0.0) Brace (measured) { Brace::Folding(b) = l.brace => b.upper.mass }
        LowerThickness "legs[].brace.folding.lower.thickness_m" (number Length SIZE) Brace (part SIXTEENTH) { Brace::Folding(b) = l.brace => b.lower.thickness }
        LowerMass "legs[].brace.folding.lower.mass_kg" (number Mass MASS = 0.0) Brace (measured) { Brace::Folding(b) = l.brace => b.lower.mass }
        SlidingPivot "legs[].brace.sliding.airframe_pivot_m" (point) Brace (structure SIXTEENTH) { Brace::Sliding(b) = l.brace => b.airframe_pivot }
        SlidingAttach "legs[].brace.sliding.leg_attach_m" (point) Brace (structure SIXTEENTH) { Brace::Sliding(b) = l.brace => b.leg_attach }
        SlidingShortest "legs[].brace.sliding.shortest_m" (number Length SIZE) Brace (part SIXTEENTH) { Brace::Sliding(b) = l.brace => b.shortest }
        SlidingLongest "legs[].brace.sliding.longest_m" (number Length SIZE) Brace (adjustment SIXTEENTH) { Brace::Sliding(b) = l.brace => b.longest }
        SlidingThickness "legs[].brace.sliding.thickness_m" (number Length SIZE) Brace (part SIXTEENTH) { Brace::Sliding(b) = l.brace => b.thickness }
        SlidingMass "legs[].brace.sliding.mass_kg" (number Mass MASS = 0.0) Brace (measured) { Brace::Sliding(b) = l.brace => b.mass }
        ActuatorMount "legs[].actuator.mount_m" (point) Actuator (structure SIXTEENTH) { l.actuator.mount }
        ActuatorAttach "legs[].actuator.attach_m" (point) Actuator (structure SIXTEENTH) { l.actuator.attach }
        AttachTo "legs[].actuator.attach_to" (choice attach) Actuator (structure) {}
        Bore "legs[].actuator.bore_m" (number Length SIZE) Actuator (part SIXTEENTH) { l.actuator.bore }
        Rod "legs[].actuator.rod_m" (number Length SIZE) Actuator (part SIXTEENTH) { l.actuator.rod }
        RetractedLength "legs[].actuator.shortest_m" (number Length SIZE) Actuator (adjustment SIXTEENTH) { l.actuator.shortest }
        ExtendedLength "legs[].actuator.longest_m" (number Length SIZE) Actuator (adjustment SIXTEENTH) { l.actuator.longest }
        BarrelDiameter "legs[].actuator.body_diameter_m" (number Length SIZE) Actuator (part SIXTEENTH) { l.actuator.body_diameter }
        BarrelLength "legs[].actuator.body_length_m" (number Length SIZE) Actuator (part SIXTEENTH) { l.actuator.body_length }
        BarrelAt "legs[].actuator.body_at" (choice body_end) Actuator (structure) {}
        ActuatorMass "legs[].actuator.mass_kg" (number Mass MASS = 0.0) Actuator (measured) { l.actuator.mass }
        SealFriction "legs[].actuator.seal_friction_n" (option Force FRICTION) Actuator (measured) { l.actuator.seal_friction }
        @2 SealBreakOut "legs[].actuator.seal_break_out_n" (option Force FRICTION) Actuator (measured) { l.actuator.seal_break_out }
        @3 RodEndPitch "legs[].actuator.rod_end_pitch_m" (option Pitch THREAD_PITCH) Actuator (measured) { l.actuator.rod_end_pitch }
    }
    of Spring |s| {
        SpringName "legs[].springs[].name" (text) Springs (measured) { s.name }
        SpringType "legs[].springs[].kind" (choice ["linear", "gas", "torsion"]) Springs (part) {}
        LinearFirstBody "legs[].springs[].kind.linear.first.body" (choice body) Springs (structure) {}
        LinearFirstPoint "legs[].springs[].kind.linear.first.point_m" (point) Springs (structure SIXTEENTH) { SpringKind::Linear(k) = s.kind => k.first.point }
        LinearSecondBody "legs[].springs[].kind.linear.second.body" (choice body) Springs (structure) {}
        LinearSecondPoint "legs[].springs[].kind.linear.second.point_m" (point) Springs (structure SIXTEENTH) { SpringKind::Linear(k) = s.kind => k.second.point }
        SpringRate "legs[].springs[].kind.linear.rate_n_m" (number Stiffness SPRING_RATE) Springs (part 100.0) { SpringKind::Linear(k) = s.kind => k.rate }
        SpringSet "legs[].springs[].kind.linear.set" (choice ["free_length", "force_at_down"]) Springs (measured) {}
        FreeLength "legs[].springs[].kind.linear.set.free_length.length_m" (number Length SIZE) Springs (adjustment SIXTEENTH) { SpringKind::Linear(LinearSpring { set: SpringSet::FreeLength { length }, .. }) = s.kind => *length }
        ForceAtDown "legs[].springs[].kind.linear.set.force_at_down.force_n" (number Force SPRING_FORCE) Springs (adjustment N_PER_LBF) { SpringKind::Linear(LinearSpring { set: SpringSet::ForceAtDown { force }, .. }) = s.kind => *force }
        SpringActs "legs[].springs[].kind.linear.acts" (choice acts) Springs (measured) {}
        GasFirstBody "legs[].springs[].kind.gas.first.body" (choice body) Springs (structure) {}
        GasFirstPoint "legs[].springs[].kind.gas.first.point_m" (point) Springs (structure SIXTEENTH) { SpringKind::Gas(k) = s.kind => k.first.point }
        GasSecondBody "legs[].springs[].kind.gas.second.body" (choice body) Springs (structure) {}
        GasSecondPoint "legs[].springs[].kind.gas.second.point_m" (point) Springs (structure SIXTEENTH) { SpringKind::Gas(k) = s.kind => k.second.point }
        GasShortest "legs[].springs[].kind.gas.shortest_m" (number Length SIZE) Springs (part SIXTEENTH) { SpringKind::Gas(k) = s.kind => k.shortest }
        GasLongest "legs[].springs[].kind.gas.longest_m" (number Length SIZE) Springs (part SIXTEENTH) { SpringKind::Gas(k) = s.kind => k.longest }
        GasForceLongest "legs[].springs[].kind.gas.force_longest_n" (number Force GAS_FORCE) Springs (part 5.0 * N_PER_LBF) { SpringKind::Gas(k) = s.kind => k.force_longest }
        GasForceShortest "legs[].springs[].kind.gas.force_shortest_n" (number Force GAS_FORCE) Springs (part 5.0 * N_PER_LBF) { SpringKind::Gas(k) = s.kind => k.force_shortest }
        GasSpringLaw "legs[].springs[].kind.gas.law" (choice ["linear", "polytropic"]) Springs (measured) {}
        GasSpringExponent "legs[].springs[].kind.gas.law.polytropic.exponent" (number Ratio EXPONENT) Springs (measured) { SpringKind::Gas(GasSpring { law: GasLaw::Polytropic { exponent }, .. }) = s.kind => *exponent }
        TorsionJoint "legs[].springs[].kind.torsion.joint" (choice joint) Springs (structure) {}
        TorsionRate "legs[].springs[].kind.torsion.rate_n_m_rad" (number TorsionalStiffness TORSION_RATE) Springs (part 1.0) { SpringKind::Torsion(k) = s.kind => k.rate }
        TorsionMoment "legs[].springs[].kind.torsion.moment_at_down_n_m" (number Moment MOMENT) Springs (adjustment N_PER_LBF * M_PER_INCH) { SpringKind::Torsion(k) = s.kind => k.moment_at_down }
    }
    of Leg |l| {
        TrunnionPinRadius "legs[].pins.trunnion.radius_m" (option Length PIN_RADIUS) Pins (measured) { l.pins.trunnion.radius }
        TrunnionPinFriction "legs[].pins.trunnion.friction" (option Ratio FRICTION_COEFFICIENT) Pins (measured) { l.pins.trunnion.friction }
        @2 TrunnionPinCouple "legs[].pins.trunnion.couple_n_m" (option Moment PIN_COUPLE) Pins (measured) { l.pins.trunnion.couple }
        BracePivotPinRadius "legs[].pins.brace_pivot.radius_m" (option Length PIN_RADIUS) Pins (measured) { l.pins.brace_pivot.radius }
        BracePivotPinFriction "legs[].pins.brace_pivot.friction" (option Ratio FRICTION_COEFFICIENT) Pins (measured) { l.pins.brace_pivot.friction }
        @2 BracePivotPinCouple "legs[].pins.brace_pivot.couple_n_m" (option Moment PIN_COUPLE) Pins (measured) { l.pins.brace_pivot.couple }
        KneePinRadius "legs[].pins.knee.radius_m" (option Length PIN_RADIUS) Pins (measured) { l.pins.knee.radius }
        KneePinFriction "legs[].pins.knee.friction" (option Ratio FRICTION_COEFFICIENT) Pins (measured) { l.pins.knee.friction }
        @2 KneePinCouple "legs[].pins.knee.couple_n_m" (option Moment PIN_COUPLE) Pins (measured) { l.pins.knee.couple }
        BraceAttachPinRadius "legs[].pins.leg_attach.radius_m" (option Length PIN_RADIUS) Pins (measured) { l.pins.leg_attach.radius }
        BraceAttachPinFriction "legs[].pins.leg_attach.friction" (option Ratio FRICTION_COEFFICIENT) Pins (measured) { l.pins.leg_attach.friction }
        @2 BraceAttachPinCouple "legs[].pins.leg_attach.couple_n_m" (option Moment PIN_COUPLE) Pins (measured) { l.pins.leg_attach.couple }
        MountPinRadius "legs[].pins.actuator_mount.radius_m" (option Length PIN_RADIUS) Pins (measured) { l.pins.actuator_mount.radius }
        MountPinFriction "legs[].pins.actuator_mount.friction" (option Ratio FRICTION_COEFFICIENT) Pins (measured) { l.pins.actuator_mount.friction }
        @2 MountPinCouple "legs[].pins.actuator_mount.couple_n_m" (option Moment PIN_COUPLE) Pins (measured) { l.pins.actuator_mount.couple }
        AttachPinRadius "legs[].pins.actuator_attach.radius_m" (option Length PIN_RADIUS) Pins (measured) { l.pins.actuator_attach.radius }
        AttachPinFriction "legs[].pins.actuator_attach.friction" (option Ratio FRICTION_COEFFICIENT) Pins (measured) { l.pins.actuator_attach.friction }
        @2 AttachPinCouple "legs[].pins.actuator_attach.couple_n_m" (option Moment PIN_COUPLE) Pins (measured) { l.pins.actuator_attach.couple }
        @2 SharedDrive "legs[].shared_drive" (text) Actuator (measured) { l.shared_drive }
        @2 DriveRatio "legs[].drive_ratio" (number Ratio RATIO = 1.0) Actuator (structure 0.01) { l.drive_ratio }
        OrificeUp "legs[].drive.orifice_up.hole_m" (opens Hole ORIFICE) Lines (part M_PER_INCH / 128.0) { Some(o) = l.drive.orifice_up => o.hole }
        DischargeUp "legs[].drive.orifice_up.discharge" (number Ratio DISCHARGE = SHARP_EDGE) Lines (measured) { Some(o) = l.drive.orifice_up => o.discharge }
        OrificeDown "legs[].drive.orifice_down.hole_m" (opens Hole ORIFICE) Lines (part M_PER_INCH / 128.0) { Some(o) = l.drive.orifice_down => o.hole }
        DischargeDown "legs[].drive.orifice_down.discharge" (number Ratio DISCHARGE = SHARP_EDGE) Lines (measured) { Some(o) = l.drive.orifice_down => o.discharge }
        StageValve "legs[].drive.stage_valve_pa" (option Pressure PRESSURE) Lines (adjustment 25.0 * PA_PER_PSI) { l.drive.stage_valve }
        JackArea "legs[].drive.jack.area_m2" (opens Area JACK_AREA) Lines (part 1e-5) { Some(j) = l.drive.strut_jack => j.area }
        ShortenPressure "legs[].drive.jack.shorten_pa" (number Pressure BACK_PRESSURE) Lines (measured) { Some(j) = l.drive.strut_jack => j.shorten_pressure }
        LengthenPressure "legs[].drive.jack.lengthen_pa" (number Pressure BACK_PRESSURE = 0.0) Lines (measured) { Some(j) = l.drive.strut_jack => j.lengthen_pressure }
        FreeSpeed "legs[].drive.electric.free_speed_m_s" (number StrokeSpeed STROKE_SPEED) Motor (part 0.001) { Some(m) = l.drive.electric => m.free_speed }
        StallForce "legs[].drive.electric.stall_force_n" (number Force STALL_FORCE) Motor (part 25.0 * N_PER_LBF) { Some(m) = l.drive.electric => m.stall_force }
        MotorVoltage "legs[].drive.electric.motor_v" (number Voltage VOLTAGE) Motor (measured) { Some(m) = l.drive.electric => m.rated_voltage }
        MotorIdleCurrent "legs[].drive.electric.idle_a" (number Current IDLE_CURRENT) Motor (measured) { Some(m) = l.drive.electric => m.idle_current }
        LockedCurrent "legs[].drive.electric.locked_a" (number Current CURRENT) Motor (measured) { Some(m) = l.drive.electric => m.locked_current }
        BackDrive "legs[].drive.electric.back_drive_n" (option Force FRICTION) Motor (measured) { Some(m) = l.drive.electric => m.back_drive }
        ShortenedSwitch "legs[].drive.switches.shortened_at" (number Travel TRAVEL = 1.0) Switches (adjustment 0.01) { l.drive.switches.shortened }
        UpSwitch "legs[].drive.switches.up_at_travel" (number Travel TRAVEL = 1.0) Switches (adjustment 0.01) { l.drive.switches.up }
        DownSwitch "legs[].drive.switches.down_at_travel" (number Travel TRAVEL = 0.0) Switches (adjustment 0.01) { l.drive.switches.down }
        StartTravel "legs[].drive.start_travel" (option Travel TRAVEL) Switches (measured) { l.drive.start_travel }
        WheelDragArea "legs[].air.wheel_drag_area_m2" (number DragArea AREA = 0.0) Air (measured) { l.air.wheel_drag_area }
        LegDragArea "legs[].air.leg_drag_area_m2" (number DragArea AREA = 0.0) Air (measured) { l.air.leg_drag_area }
        BodyInertia "legs[].fall.body_inertia_kg_m2" (option Inertia INERTIA) Fall (measured) { l.fall.body_inertia }
        ReturnOrifice "legs[].fall.return_orifice_m" (option Hole ORIFICE) Fall (part M_PER_INCH / 128.0) { l.fall.return_orifice }
        ReturnDischarge "legs[].fall.discharge_coefficient" (option Ratio DISCHARGE) Fall (measured) { l.fall.discharge }
        KneePlay "legs[].fall.knee_play_m" (option Length PLAY) Fall (measured) { l.fall.knee_play }
        @2 PinBreakOut "legs[].fall.pin_break_out" (option Ratio BREAK_OUT) Fall (measured) { l.fall.pin_break_out }
    }
    of Obstacle |o| {
        ObstacleName "legs[].well[].name" (text) Well (measured) { o.name }
        ObstacleShape "legs[].well[].shape" (choice ["solid", "surface"]) Well (measured) {}
        SolidPoints "legs[].well[].shape.solid.points_m[]" (outline) Well (structure SIXTEENTH) { Shape::Solid { points } = o.shape => *points }
        SurfacePoints "legs[].well[].shape.surface.points_m[]" (outline) Well (structure SIXTEENTH) { Shape::Surface { points } = o.shape => *points }
        RequiredClearance "legs[].well[].required_clearance_m" (option Length CLEARANCE) Well (requirement) { o.required_clearance }
        Ignores "legs[].well[].ignores[]" (set part) Well (measured) {}
    }
    of Leg |l| {
        SeenStop "legs[].seen_stop" (choice ["none", "travel", "angle", "actuator_pins", "axle_from"]) Seen (measured) {}
        SeenSelected "legs[].seen_stop.selected" (choice selected) Seen (measured) {}
        SeenTravel "legs[].seen_stop.how_far.travel.travel" (option Travel TRAVEL) Seen (measured) { Some(SeenStop { how_far: HowFar::Travel { travel, .. }, .. }) = l.seen_stop => *travel }
        SeenTravelWithin "legs[].seen_stop.how_far.travel.travel_within" (number Travel SHARE_WITHIN) Seen (measured) { Some(SeenStop { how_far: HowFar::Travel { within, .. }, .. }) = l.seen_stop => *within }
        SeenAngle "legs[].seen_stop.how_far.angle.angle_rad" (option Angle ANGLE) Seen (measured) { Some(SeenStop { how_far: HowFar::Angle { angle, .. }, .. }) = l.seen_stop => *angle }
        SeenAngleWithin "legs[].seen_stop.how_far.angle.angle_within_rad" (number Angle ANGLE_WITHIN) Seen (measured) { Some(SeenStop { how_far: HowFar::Angle { within, .. }, .. }) = l.seen_stop => *within }
        SeenPinsApart "legs[].seen_stop.how_far.actuator_pins.pins_apart_m" (option Length SIZE) Seen (measured) { Some(SeenStop { how_far: HowFar::ActuatorPins { distance, .. }, .. }) = l.seen_stop => *distance }
        SeenPinsWithin "legs[].seen_stop.how_far.actuator_pins.pins_within_m" (number Length LENGTH_WITHIN) Seen (measured) { Some(SeenStop { how_far: HowFar::ActuatorPins { within, .. }, .. }) = l.seen_stop => *within }
        SeenFrom "legs[].seen_stop.how_far.axle_from.from_m" (point) Seen (measured) { Some(SeenStop { how_far: HowFar::AxleFrom { from, .. }, .. }) = l.seen_stop => *from }
        SeenAxleApart "legs[].seen_stop.how_far.axle_from.axle_apart_m" (option Length SIZE) Seen (measured) { Some(SeenStop { how_far: HowFar::AxleFrom { distance, .. }, .. }) = l.seen_stop => *distance }
        SeenAxleWithin "legs[].seen_stop.how_far.axle_from.axle_within_m" (number Length LENGTH_WITHIN) Seen (measured) { Some(SeenStop { how_far: HowFar::AxleFrom { within, .. }, .. }) = l.seen_stop => *within }
        SeenPump "legs[].seen_stop.pump" (choice pump) Seen (measured) {}
        SeenGauge "legs[].seen_stop.gauge_pa" (option Pressure BACK_PRESSURE) Seen (measured) { Some(s) = l.seen_stop => s.pressure }
        SeenGaugeWithin "legs[].seen_stop.gauge_within_pa" (number Pressure PRESSURE_WITHIN) Seen (measured) { Some(s) = l.seen_stop => s.pressure_within }
        SeenPosts "legs[].seen_stop.posts_v" (option Voltage VOLTAGE) Seen (measured) { Some(s) = l.seen_stop => s.voltage }
        SeenPostsWithin "legs[].seen_stop.posts_within_v" (number Voltage VOLTAGE_WITHIN) Seen (measured) { Some(s) = l.seen_stop => s.voltage_within }
        SeenDrawingWithin "legs[].seen_stop.drawing_within_m" (number Length LENGTH_WITHIN) Seen (measured) { Some(s) = l.seen_stop => s.drawing_within }
        SeenForcesWithin "legs[].seen_stop.forces_within" (number Travel SHARE_WITHIN) Seen (measured) { Some(s) = l.seen_stop => s.forces_within }
    }
}
