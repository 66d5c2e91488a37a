/** What a newcomer reads first; a test checks that it has no problem. */
export const firstExample = `# What there is
material pan-balance "Pan balance"
  reusable
  from kit

material dried-bean "Dried beans"
  consumable
  measured in g
  pack of 500 g costs 2.10 USD
  caution small-parts

# One lesson
lesson weigh-1 "Which is heavier?"
  about: Children compare two masses by feel and then let the balance decide.
  objectives
    introduces compare-mass
    checks compare-mass
  materials
    pan-balance  1 per pair      in kit
    dried-bean   150 g per pair  not in kit
  words heavier, lighter

  activity two-bags "Two mystery bags" 20 min
    do: Fill two bags with {dried-bean}. Put one in each pan of the {pan-balance}
      and wait until it settles.
    ask: Which bag is {heavier}, and which {lighter}?
      expect: The one whose pan went down is heavier.

# What is learnt, in which order, and by whom
objective compare-mass "Compare the masses of two objects"

kit field-kit "Field kit"
  holds
    pan-balance 1

course measuring "Measuring"
  uses field-kit 1 per family
  unit weighing "Weighing"
    weigh-1

class harbour "Harbour co-op"
  teaches measuring
  learners 7
  starts 2026-09-07
  meets mon, thu
  session 50 min
`;

export const introduction = `# The Haversack language

You write down four things in plain text: what there is, what happens in each lesson, in which order lessons are taught, and who is
taught. Haversack works out the rest. Nobody types a total, a date or a shopping list by hand.

\`\`\`haversack
${firstExample.trimEnd()}
\`\`\`

## How a file reads

- **Files.** Files end in \`.kit\` (things), \`.lesson\` (lessons) or \`.course\` (courses, classes, objectives). All three read alike; the
  endings only help people find their way. All files of a folder are one programme, and what one file declares every other can name.
- **Lines.** A line says one thing and begins with a word of the language, or in a list with a name. Lines that stand further in belong to
  the line above them. Two spaces a step are customary; any depth will do as long as the lines of one block begin in the same column.
- **Names** are lower-case words joined by hyphens, such as \`pan-balance\`. A title in quotation marks may follow and is what people
  read; without one it is made from the name. Things of different kinds may share a name.
- **Text** after a word with a colon, such as \`do:\`, needs no quotation marks. It runs to the end of the line and goes on over
  the lines below that stand further in than its word. *Emphasis* and links are written as in CommonMark.
- **Names in braces** inside text, such as \`{pan-balance}\`, are checked, and change along when the thing is renamed. A name may be that of a
  material, print, book, game, lesson, objective or a word that a lesson teaches. A plain brace is written \`\\{\`. In the brief
  the name's title stands there as it reads in a sentence: \`the {pan-balance}\` is "the pan balance", \`two {pan-balance}s\` is "two pan balances".
- **Remarks** for yourself begin with \`#\`, on a line of their own or at the end of a line. Inside text \`#\` is text: there a remark stands on its
  own line.
- **Amounts** are whole numbers, decimals with a point, or fractions: \`20\`, \`0.5 kg\`, \`1 1/2 cups\`. Dates are year-month-day: \`2026-09-07\`.
- **For whom** an amount is: \`per learner\`, \`per pair\`, \`per group\`, \`per group of 4\`, \`per class\` or \`per adult\`. With none of these it is for
  the whole class.`;

export const decisions = `## Why it reads this way

- \`practices\` and \`practises\` both read, because both are spelt so by teachers; they mean the same.
- \`#\` inside text is text, so that "# 3" or a link never loses its end. Everywhere else it begins a remark after a blank.
- A name of several kinds in braces means the first of these that has it: material, print, book, game, lesson, objective, word.
- A line is never thrown away silently: one that cannot be read has a message, and the lines around it keep their meaning.
- In \`a or b\` the first thing is the one meant; the other is taken when it is at hand first. The in-kit word of such a line is taken
  as right when the kits hold one of the two.
- A prerequisite, an objective or a word is looked for in the course that teaches the lesson, since another course may order things otherwise.
- A thing counts as used in a lesson when a step names it in braces or in plain words, or when a game of the lesson needs it.
- A caution with a text in a lesson says that the writer has thought of it there, and settles the warning about young children.`;
