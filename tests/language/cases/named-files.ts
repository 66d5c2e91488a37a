import type { Case } from './case.js';

const group = `
course measuring
class harbour
  teaches measuring
  learners 2
  starts 2026-09-07
  meets mon`;
const town = `
--- calendars/town.ics
BEGIN:VCALENDAR
BEGIN:VEVENT
UID:one
DTSTART;VALUE=DATE:20261005
SUMMARY:Harvest day
END:VEVENT
END:VCALENDAR`;
const state = `
--- frameworks/state.json
{ "CFDocument": { "identifier": "d", "title": "State" },
  "CFItems": [{ "identifier": "a", "humanCodingScheme": "M.1.1", "fullStatement": "Compares." }, { "identifier": "b", "humanCodingScheme": "M 1 2", "fullStatement": "Orders." }],
  "CFAssociations": [{ "associationType": "isChildOf", "originNodeURI": { "identifier": "a" }, "destinationNodeURI": { "identifier": "d" } },
    { "associationType": "isChildOf", "originNodeURI": { "identifier": "b" }, "destinationNodeURI": { "identifier": "d" } }] }`;
const aligned = (code: string): string => `
course measuring
  unit one
    weigh
framework state-frame from "frameworks/state.json"
objective compare-mass
  aligns to state-frame ${code}
`;
const lesson = `lesson weigh
  objectives
    introduces compare-mass
    checks compare-mass
`;

export const namedFileCases: Case[] = [
    {
        code: 'file-not-usable',
        fires: [`${group}
  off from "calendars/twon.ics"
#          ^^^^^^^^^^^^^^^^^^^^ file-not-usable: The calendar 'calendars/twon.ics' cannot be used. There is no such file
${town}
`, `${group}
  off from "town.ics"
#          ^^^^^^^^^^ file-not-usable: There is no such file
${town}
`, `${group}
  off from "../town.ics"
#          ^^^^^^^^^^^^^ file-not-usable: leads out of the programme's folder
  off from "calendars/../../programme/calendars/town.ics"
#          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: leads out of the programme's folder
  off from "/programme/calendars/town.ics"
#          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: begins at the top of the disk
  off from "C:/calendars/town.ics"
#          ^^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: begins at the top of the disk
  off from "//server/town.ics"
#          ^^^^^^^^^^^^^^^^^^^ file-not-usable: leads to another computer
  off from "https://example.org/town.ics"
#          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: This is an address
  off from "file:///programme/calendars/town.ics"
#          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: This is an address
  off from "data:text/calendar,BEGIN:VCALENDAR"
#          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: This is an address
  off from "calendars/%2e%2e/%2e%2e/town.ics"
#          ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: written as in an address
  off from "calendars\\town.ics"
#          ^^^^^^^^^^^^^^^^^^^^ file-not-usable: divided by /
  off from "calendars/town.txt"
#          ^^^^^^^^^^^^^^^^^^^^ file-not-usable: ends in .ics
  off from ""
#          ^^ file-not-usable: There is no path between the quotes
${town}
`, `${group}
  off from "calendars/notes.ics"
#          ^^^^^^^^^^^^^^^^^^^^^ file-not-usable: This is not a calendar
  off from "calendars/page.ics"
#          ^^^^^^^^^^^^^^^^^^^^ file-not-usable: This is a web page
--- calendars/notes.ics
Closed on Monday.
--- calendars/page.ics
<!DOCTYPE html>
<html></html>
`, `
framework state-frame from "frameworks/stat.json"
#                          ^^^^^^^^^^^^^^^^^^^^^^ file-not-usable: The framework 'frameworks/stat.json' cannot be used
framework county-frame from "../county.json"
#                           ^^^^^^^^^^^^^^^^ file-not-usable: such as "frameworks/state.json"
${state}
`],
        silent: [`${group}
  off from "calendars/town.ics"
  off from "./calendars/../calendars//town.ics"
${town}
`, `
framework state-frame "Without a file"
`]
    },
    {
        code: 'file-partly-read',
        fires: [`${group}
  off from "calendars/town.ics"
#          ^^^^^^^^^^^^^^^^^^^^ file-partly-read: 'Book fair' on 2026-10-12 ends before it begins and is left out.
--- calendars/town.ics
BEGIN:VCALENDAR
BEGIN:VEVENT
DTSTART;VALUE=DATE:20261012
DTEND;VALUE=DATE:20261012
SUMMARY:Book fair
END:VEVENT
END:VCALENDAR
`, `${group}
  off from "calendars/town.ics" named "harvest", "Harvset"
#          ^^^^^^^^^^^^^^^^^^^^ file-partly-read: no event of whole days in it is called 'Harvset'
${town}
`],
        silent: [`${group}
  off from "calendars/town.ics"
${town}
`, `${group}
  off from "calendars/town.ics" named "harvest"
${town}
`]
    },
    {
        code: 'unknown-framework-code',
        fires: [`${aligned('M.1.3')}# ^^^^^^^^^^^^^^^^^^^^^^^^^^^ unknown-framework-code: did you mean 'M.1.1'
${lesson}${state}
`, `${aligned('history')}# ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ unknown-framework-code: has no item 'history'. Compare
${lesson}${state}
`],
        silent: [`${aligned('M.1.1')}${lesson}${state}
`, `${aligned('m12')}${lesson}${state}
`, `
framework state-frame "Without a file"
objective compare-mass
  aligns to state-frame M.9
${lesson}course measuring
  unit one
    weigh
`]
    },
    {
        code: 'own-cupboard',
        fires: [`${group}
  shares cupboard with harbour, hill
#                      ^^^^^^^ own-cupboard: need not be told
class hill
  teaches measuring
  learners 2
  starts 2026-09-07
  meets tue
`, `${group}
  shares cupboard with harbour
#                      ^^^^^^^ own-cupboard
`],
        silent: [`${group}
  shares cupboard with hill
class hill
  teaches measuring
  learners 2
  starts 2026-09-07
  meets tue
  shares cupboard with harbour
`]
    }
];
