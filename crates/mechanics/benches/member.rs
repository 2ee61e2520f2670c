//! How long one set of internal forces takes to be judged, and how long the resistance takes to be worked out.

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use gantline_mechanics::cone::LoadCone;
use gantline_mechanics::envelope::{Actions, MemberPart, Pull, SecondOrder, SlewRange, member_envelope};
use gantline_mechanics::material::{BucklingClass, Forming, HazFactors, Material};
use gantline_mechanics::member::{
    Aisc360Factors, En1993Factors, En1999Factors, InternalForces, Member, MemberActions, MemberCode,
};
use gantline_mechanics::section::Section;
use gantline_mechanics::unit::{
    BaseFixity, Brace, BraceAction, HeadJoint, Part, PinOffsets, RopePoint, Unit, UnitModel,
};

const EN1993: MemberCode = MemberCode::En1993(En1993Factors { gamma_m0: 1.0, gamma_m1: 1.0, gamma_m2: 1.25 });
const EN1999: MemberCode = MemberCode::En1999(En1999Factors { gamma_m1: 1.1, gamma_m2: 1.25 });
const AISC360: MemberCode = MemberCode::Aisc360(Aisc360Factors {
    compression: 0.9,
    bending: 0.9,
    shear: 0.9,
    torsion: 0.9,
    tension_yield: 0.9,
    tension_rupture: 0.75,
    second_order: 1.0,
});

fn judge(c: &mut Criterion) {
    let rect = Section::RectTube { depth_m: 0.12, width_m: 0.08, wall_m: 0.006, outer_radius_m: 0.009 };
    let steel = Material::steel(355e6, 470e6, Forming::ColdFormed);
    let haz = HazFactors { proof: 0.5, ultimate: 0.65 };
    let aluminum = Material::aluminum(240e6, 270e6, BucklingClass::A, haz);
    let sets: Vec<MemberActions> = (0..400)
        .map(|i| {
            let (sin, cos) = (0.157 * f64::from(i)).sin_cos();
            MemberActions::alone(InternalForces {
                n_n: -20e3 * cos,
                v_y_n: 4e3 * sin,
                v_z_n: 6e3 * cos,
                t_nm: 1e3 * sin,
                m_y_nm: 6e3 * cos,
                m_z_nm: 4e3 * sin,
            })
        })
        .collect();
    for (name, material, code) in [("en1993", steel, EN1993), ("en1999", aluminum, EN1999), ("aisc360", steel, AISC360)]
    {
        let member = Member::plain(rect, material, 2.4);
        let Ok(resistance) = member.resistance(&code) else { continue };
        c.bench_function(&format!("member/{name}/400 sets of forces"), |b| {
            b.iter(|| sets.iter().map(|set| resistance.governing(black_box(set)).utilization).fold(0.0, f64::max));
        });
        c.bench_function(&format!("member/{name}/resistance"), |b| b.iter(|| black_box(&member).resistance(&code)));
    }
}

/// Mast, arm and brace of one unit under one case, over the whole cone.
fn search(c: &mut Criterion) {
    let steel = Material::steel(355e6, 470e6, Forming::ColdFormed);
    let mast = Section::RoundTube { diameter_m: 0.1, wall_m: 0.006 };
    let arm = Section::RectTube { depth_m: 0.11, width_m: 0.07, wall_m: 0.005, outer_radius_m: 0.0075 };
    let strut = Section::RoundTube { diameter_m: 0.045, wall_m: 0.003 };
    let (Ok(mast_bar), Ok(arm_bar), Ok(bar)) = (mast.stiffness(&steel), arm.stiffness(&steel), strut.stiffness(&steel))
    else {
        return;
    };
    let unit = Unit {
        mast: mast_bar,
        mast_height_m: 1.7,
        base: BaseFixity::Rigid,
        arm: arm_bar,
        outreach_m: 1.3,
        tail_m: 0.8,
        head: HeadJoint::Pinned,
        brace: Brace::RearToMast { tail_at_m: 0.7, mast_at_m: 0.6, bar, action: BraceAction::Both },
        pins: PinOffsets::default(),
        points: vec![RopePoint { x_m: 1.25, sideways_m: 0.0, drop_m: 0.08 }],
        lumps: Vec::new(),
    };
    let Ok(model) = UnitModel::new(&unit) else { return };
    for (name, code) in [("en1993", EN1993), ("aisc360", AISC360)] {
        let resistance = |section, length| Member::plain(section, steel, length).resistance(&code);
        let (Ok(mast), Ok(arm), Ok(brace)) = (resistance(mast, 3.4), resistance(arm, 1.3), resistance(strut, 1.1))
        else {
            return;
        };
        let parts = [(Part::Mast, &mast), (Part::Arm, &arm), (Part::Brace, &brace)]
            .map(|(part, resistance)| MemberPart { part, resistance, marks: &[] });
        let actions = Actions::of_pull(Pull::new(0, 4e3, LoadCone::whole(0.35)), 1.1);
        c.bench_function(&format!("member/{name}/mast, arm, brace over the cone"), |b| {
            b.iter(|| {
                let range = SlewRange::WholeTurn;
                member_envelope(black_box(&model), &actions, &range, &parts, SecondOrder::FIRST)
            });
        });
    }
}

criterion_group!(benches, judge, search);
criterion_main!(benches);
