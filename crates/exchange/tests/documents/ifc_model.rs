//! The building model as text: whole in itself, with identities that stay from one revision to the next.

use std::collections::{BTreeMap, BTreeSet};

use gantline_exchange::documents::DocumentKind;
use gantline_plan::document::Tag;
use gantline_plan::quantity::UnitSystem;

use super::worked::{COURTYARD, SMALL, Worked};

fn model(worked: &Worked) -> String {
    String::from_utf8(worked.document(DocumentKind::Model, UnitSystem::Si)).unwrap()
}

/// Entities by number: name and values.
fn entities(text: &str) -> BTreeMap<u32, (String, String)> {
    let lines = text.lines().filter_map(|line| line.strip_prefix('#'));
    let mut all = BTreeMap::new();
    for line in lines {
        let (number, rest) = line.split_once('=').unwrap();
        let (name, values) = rest.trim_end_matches(");").split_once('(').unwrap();
        let old = all.insert(number.parse().unwrap(), (name.to_owned(), values.to_owned()));
        assert!(old.is_none(), "#{number} stands twice");
    }
    all
}

/// Numbers named in values, outside of words.
fn named(values: &str) -> Vec<u32> {
    let outside: String = values.split('\'').step_by(2).collect::<Vec<_>>().join(" ");
    let digits = |part: &str| part.chars().take_while(char::is_ascii_digit).collect::<String>();
    outside.split('#').skip(1).map(|part| digits(part).parse().unwrap()).collect()
}

/// Identities with the kind of thing that has each.
fn identities(text: &str) -> Vec<(String, String)> {
    let all = entities(text);
    let first = all.values().filter_map(|(name, values)| {
        let (id, _) = values.strip_prefix('\'')?.split_once('\'')?;
        (id.len() == 22 && !id.contains(' ')).then(|| (id.to_owned(), name.clone()))
    });
    first.collect()
}

#[test]
fn every_entity_that_is_named_is_there_and_stands_before() {
    for text in [SMALL, COURTYARD] {
        let all = entities(&model(&Worked::of(text)));
        for (&number, (name, values)) in &all {
            for other in named(values) {
                assert!(other < number && all.contains_key(&other), "#{number} {name} names #{other}");
            }
        }
        let count = |kind: &str| all.values().filter(|(name, _)| name == kind).count();
        assert!(count("IFCSLAB") > 0 && count("IFCTRIANGULATEDFACESET") > 0);
    }
}

#[test]
fn things_keep_their_identity_in_the_next_revision_and_no_two_share_one() {
    let worked = Worked::of(COURTYARD);
    let first = identities(&model(&worked));
    let unique: BTreeSet<&String> = first.iter().map(|(id, _)| id).collect();
    assert_eq!(unique.len(), first.len());
    let mut plan = worked.plan.clone();
    plan.title.revision = "B".to_owned();
    for (number, placement) in plan.placements.values_mut().enumerate() {
        placement.tag = Tag(format!("renamed {number}"));
    }
    let second = identities(&model(&Worked::from(plan)));
    assert_eq!(first.iter().collect::<BTreeSet<_>>(), second.iter().collect::<BTreeSet<_>>());
    // Without its first base every other thing is who it was; reactions that bases share may pass to the next of them.
    let mut plan = worked.plan.clone();
    let (gone, _) = plan.placements.pop_first().unwrap();
    let third: BTreeSet<(String, String)> = identities(&model(&Worked::from(plan))).into_iter().collect();
    let is_thing = |kind: &str| !kind.starts_with("IFCREL") && kind != "IFCPROPERTYSET";
    let things = |all: &[(String, String)]| all.iter().filter(|(_, kind)| is_thing(kind)).count();
    let lost = first.iter().filter(|one| is_thing(&one.1) && !third.contains(*one));
    let kinds: Vec<&str> = lost.map(|(_, kind)| kind.as_str()).collect();
    assert!(kinds.contains(&"IFCDISCRETEACCESSORY") && kinds.len() <= 12, "{gone}: {kinds:?}");
    assert!(things(&third.into_iter().collect::<Vec<_>>()) < things(&first));
    let mut plan = worked.plan;
    plan.title.job.push_str(", another");
    let other: BTreeSet<String> = identities(&model(&Worked::from(plan))).into_iter().map(|(id, _)| id).collect();
    assert!(first.iter().all(|(id, _)| !other.contains(id)), "two jobs share no identity");
}

#[test]
fn a_base_whose_parts_are_not_known_is_in_the_model_and_says_so() {
    let worked = Worked::of(COURTYARD);
    let unknown = worked.assessment.units.values().filter(|unit| unit.resolved.is_err() && unit.frame.is_some());
    assert!(unknown.count() > 0, "the plan has such a base");
    let text = model(&worked);
    let bases = text.lines().filter(|line| line.contains("=IFCDISCRETEACCESSORY(")).count();
    assert_eq!(bases, worked.assessment.units.values().filter(|unit| unit.frame.is_some()).count());
    assert!(text.contains("'parts not known'") && text.contains("'Not checked',$,IFCLABEL('the family"));
}
