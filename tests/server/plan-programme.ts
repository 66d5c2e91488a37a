/** A small programme with a plan: two classes, a thing that runs out, a thing of which there are too few. */
export const planProgramme = {
    'things.kit': `material gram-cube "Gram cubes"
  reusable
  stand-in bean 1 for 1

material bean "Dried beans"
  reusable

material sand "Fine sand"
  consumable
  measured in g
  pack of 500 g costs 2.00 EUR
  arrives in 10 days

kit weighing-box
  holds
    gram-cube 20
`,
    'weigh.lesson': `lesson weigh-1 "Two bags"
  objectives
    introduces compare-mass
  activity two-bags 15 min
    materials
      gram-cube  20 per pair  in kit
      sand       50 g per learner  not in kit
    do: Fill a bag with {gram-cube}s and one with {sand}.

lesson weigh-2 "Three bags"
  follows weigh-1
  objectives
    checks compare-mass
  activity three-bags 20 min
    materials
      sand 100 g per learner  not in kit
    do: Fill a bag with {sand}.
`,
    'weighing.course': `objective compare-mass "Compare two masses"

course weighing "Weighing"
  uses weighing-box 1 per family
  unit bags "Bags"
    weigh-1
    weigh-2

class harbour "Harbour co-op"
  teaches weighing
  learners 7
  kits weighing-box 4
  on hand
    sand 400 g
    bean 100
  on order
    sand 500 g arriving 2026-09-15
  starts 2026-09-14
  meets mon

class millpond "Millpond co-op"
  teaches weighing
  learners 2
  kits weighing-box 1
  on hand
    sand 400 g
  starts 2026-09-15
  meets tue
`
};

/** What both classes are taught otherwise, and what harbour is. */
export const adaptedPlan = (both: string, harbour: string, weigh = planProgramme['weigh.lesson']) => ({
    ...planProgramme,
    'weigh.lesson': weigh,
    'more.lesson': `lesson weigh-3 "Five bags"
  activity five-bags 25 min
    materials
      bean 3 per learner
    do: Lay out three {bean}s.
  activity last-bag 5 min
    materials
      bean 2 per pair
    do: Weigh one {bean}.
`,
    'weighing.course': planProgramme['weighing.course'].replace('    weigh-2\n', '    weigh-2\n    weigh-3\n'),
    'z.course': `${both === '' ? '' : `adaptation all of weighing\n${both}`}${harbour === '' ? '' : `adaptation harbours "For the harbour" of weighing for harbour\n${harbour}`}`
});
