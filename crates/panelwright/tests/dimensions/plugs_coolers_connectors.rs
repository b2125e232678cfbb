//! Plugs, coolers and panel parts: each lookup, and the sums the numbers came from.

use super::near;
use panelwright::dimensions::connectors::*;
use panelwright::dimensions::coolers::*;
use panelwright::dimensions::plugs::*;

#[test]
fn card_power_plugs_keep_their_room() {
    for plug in [CardPowerPlug::SixPin, CardPowerPlug::EightPin] {
        let room = card_power_room(plug, PlugShape::Straight).expect("known").get();
        near(room, POWER_PLUG_STANDS_OUT.get() + 25.0, 0.31);
        assert_eq!(card_power_room(plug, PlugShape::RightAngle).map(|r| r.get()), Some(20.0));
    }
    assert_eq!(card_power_room(CardPowerPlug::SixteenPin, PlugShape::Straight).map(|r| r.get()), Some(50.0));
    assert_eq!(card_power_room(CardPowerPlug::SixteenPin, PlugShape::RightAngle), None);
    assert_eq!(CardPowerPlug::ALL.map(|plug| card_power_watts(plug).get()), [75.0, 150.0, 600.0]);
    assert_eq!(front_lead_room(PlugShape::Straight).get(), 50.0);
    assert_eq!(front_lead_room(PlugShape::RightAngle).get(), 20.0);
    assert_eq!(rear_plug_room(PlugShape::Straight).get(), [50.0, 60.0]);
    assert_eq!(rear_plug_room(PlugShape::RightAngle).get(), [25.0, 30.0]);
    // A plug of n columns is 4.2 n + 1.2 wide.
    near(POWER_PLUG_8_WIDTH.get(), 4.0 * POWER_PLUG_PITCH.get() + 1.2, 1e-9);
    near(POWER_PLUG_24_WIDTH.get(), 12.0 * POWER_PLUG_PITCH.get() + 1.2, 1e-9);
}

#[test]
fn right_angle_plugs_always_need_less_room() {
    for room in [mains_plug_room, sata_data_room, sata_power_room, rear_plug_room] {
        assert!(room(PlugShape::RightAngle).get()[1] < room(PlugShape::Straight).get()[0]);
    }
}

#[test]
fn coolers_stand_as_high_above_the_board_as_the_highest_processor() {
    near(SPREADER_ABOVE_BOARD.get(), 3.4 + 4.38, 1e-9);
    assert!(SPREADER_ALLOWANCE.get() >= SPREADER_ABOVE_BOARD.get() + 0.34);
    near(SPREADER_ALLOWANCE.get(), SPREADER_OF_OTHER_SOCKETS.get()[1], 1e-9);
    let [cooler, wall] = REFERENCE_COOLER.get();
    near(cooler, 2.8 * 25.4, 1e-9);
    near(wall, 3.2 * 25.4, 1e-9);
    near(GAP_ABOVE_DOWN_BLOWER.get(), wall - cooler, 1e-9);
    assert!(BETTER_GAP_ABOVE_DOWN_BLOWER.get() > GAP_ABOVE_DOWN_BLOWER.get());
    assert_eq!(MEMORY_LOW.get(), 31.25);
    assert_eq!(MEMORY_TALL.get(), [45.0, 56.0]);
    let heights = CoolerClass::ALL.map(|class| class_height(class).get());
    assert_eq!(heights, [[27.0, 47.0], [48.0, 70.0], [71.0, 119.0], [120.0, 165.0], [165.0, 170.0]]);
}

#[test]
fn push_buttons_by_size() {
    for (nominal, hole, pitch, panel) in [
        (12, 12.2, None, None),
        (16, 16.2, Some(19.0), Some([0.5, 3.2])),
        (19, 19.2, None, None),
        (22, 22.5, Some(30.0), Some([1.0, 6.0])),
        (30, 30.5, None, Some([1.0, 6.0])),
    ] {
        let button = push_button(nominal).expect("listed");
        assert_eq!(button.hole.get(), hole);
        assert_eq!(button.pitch.map(|p| p.get()), pitch);
        assert_eq!(button.panel.map(|p| p.get()), panel);
        // The hole passes the thread, and bezel and nut cover the hole.
        assert!(hole >= f64::from(nominal));
        assert!(button.bezel.get() > hole && button.nut_flats.get() > hole);
        assert!(button.depth.get() >= 25.0);
    }
    assert_eq!(push_button(25), None);
}

#[test]
fn sockets_pass_their_thread_and_windows_pass_their_plug() {
    assert_eq!(BARREL_SOCKETS.map(|socket| socket.hole_mm), [8.0, 11.2, 12.2]);
    assert_eq!(AUDIO_JACKS.map(|socket| socket.hole_mm), [6.2, 8.2]);
    for socket in BARREL_SOCKETS.into_iter().chain(AUDIO_JACKS) {
        assert!(socket.hole_mm >= socket.thread_mm);
        assert!(socket.panel_max_mm > 0.0);
    }
    // A 3.5 mm socket cannot clamp 6 mm of sheet: it needs a counterbore.
    assert!(AUDIO_JACKS.iter().all(|jack| jack.panel_max_mm < 6.0));
    let inside = |small: [f64; 2], large: [f64; 2]| small[0] < large[0] && small[1] < large[1];
    assert!(inside(USB_C_SHELL.get(), USB_C_MOUTH.get()));
    assert!(inside(USB_C_MOUTH.get(), USB_C_KNOCK_OUT.get()));
    assert!(inside(USB_C_KNOCK_OUT.get(), USB_C_PLUG_BODY.get()));
    assert!(inside(USB_A_SHELL.get(), USB_A_WINDOW.get()));
    // The screw holes of a USB-A lead clear its window.
    assert!(USB_A_SCREWS.get() - USB_A_SCREW_HOLE.get() > USB_A_WINDOW.get()[0] + 4.0);
}
