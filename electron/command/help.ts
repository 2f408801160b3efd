import { listInWords } from "../../core/ground/plain-words.ts";
import { testKinds } from "../../core/ground/test-kind.ts";

/** Options shared by the commands, as help shows them. */
const statingHelp = `What a recording does not say (each outranks session.json):
  --test TEST          ${listInWords(testKinds, "or")}
  --limb LIMB          both, left or right: the leg or legs that jumped
  --involved SIDE      left, right, both or none
  --rate HZ            sampling rate, for files without a time column
  --unit UNIT          N, kN, kgf or lbf, for files that name none
  --columns LIST       which column is what, by number from 1 or by name: time=1,left=2,right=3 or total=2;
                       left=2+3 adds two plates under one foot, time=none leaves the time column out
  --decimal-mark MARK  point or comma, for columns whose numbers can be read two ways
  --swap-plates        the feet stood on each other's plates: left and right are exchanged
  --resample [HZ]      puts uneven samples on an even time base, at the rate of their stamps or at HZ; never across a gap
  --mass KG            body mass, used where standing still was too short to weigh
  --keep LIST          trials kept in means although their weight differs from the session's: left-1.csv,jumps.csv#2
                       (files as the output names them; # and a number for one trial of several)
  --drop-height M      height of the box in drop jumps and drop landings, in metres
  --leading-leg LEG    left or right: the leg that stepped off the box first
  --cautions not-known --by NAME
                       NAME states, of sessions that are over, never of today's, that what was not asked of the
                       cautions is not known; without answers or this the statuses of jump criteria are withheld
  --gravity M/S2       local gravity, or
  --latitude DEGREES   from which, with --altitude METRES (0 if not given), gravity is computed`;

const exitHelp = `Exit codes: 0 every trial analysed (warnings allowed), 1 some partial or refused (all are in the output),
2 something typed cannot be or there is nothing to read, 3 a mistake in the program.`;

/** Help on the program as a whole. */
export const generalHelp = `Counterpoise: raw force-plate recordings of jumps become measures, a comparison of sides and a testing sheet.

  counterpoise analyze FILE|FOLDER… [options]     measures, findings, sides and criteria
  counterpoise inspect FILE|FOLDER… [options]     what is understood of files, without analysing them
  counterpoise sheet FOLDER --out FILE.html|.pdf  the testing sheet of one session
  counterpoise register COMMAND --register FILE   athletes, sessions and recordings kept in one file
  counterpoise analyze --help                     options and examples of a command
  counterpoise --version

Examples:
  counterpoise analyze sample-traces
  counterpoise analyze jump.csv --test countermovementJump --limb both
  counterpoise sheet month-7 --out month-7.pdf

${exitHelp}
`;

/** Help on `analyze`. */
export const analyzeHelp = `counterpoise analyze FILE|FOLDER… [options]

Analyses recordings. A folder is searched with everything below it; each folder with recordings is one session and may
hold a session.json that describes it. Hidden files are not looked at; pictures,
documents, notes and other files whose content shows that they are no recordings are left aside and named.

${statingHelp}

  --layout FILE        a saved layout; it answers for every file of its shape and for no other

  --jobs N             threads that share the work (default: those of the machine, for more than a few files);
                       the result is the same, byte for byte

Output:
  --format FORMAT      table (default, for reading), json (the whole result document) or csv (one row a measure)
  --out FILE           write there instead of standard output; whole or not at all, never over an input, for its
                       owner alone to read. On standard output, control characters in names are written as \\u001b

Examples:
  counterpoise analyze sample-traces --format csv --out results.csv
  counterpoise analyze jump.txt --rate 600 --unit N --test countermovementJump --limb both
  counterpoise analyze export.csv --columns time=1,left=2,right=3 --test countermovementJump --limb both
  counterpoise analyze month-7 --latitude 59.9 --altitude 120 --format json

${exitHelp}
`;

/** Help on `inspect`. */
export const inspectHelp = `counterpoise inspect FILE|FOLDER… [options]

Says what is understood of each recording without analysing it: encoding and dialect, what the header says, every
channel with its unit, range and mean, the rate and where it comes from, the plates or force platforms. session.json is
not looked at.

  --samples LIST       values of every channel at these samples, counted from 0, in full precision: 0,100,250
  --rate, --unit, --columns, --decimal-mark, --swap-plates, --resample, --mass, --layout   as in counterpoise analyze --help
  --format FORMAT      text (default) or json

Examples:
  counterpoise inspect export.csv
  counterpoise inspect jump.c3d --samples 0,999 --format json

Exit codes: 0 every file understood (warnings allowed), 1 some refused, 2 something typed cannot be or there is nothing
to read, 3 a mistake in the program.
`;

/** Help on `sheet`. */
export const sheetHelp = `counterpoise sheet FOLDER --out FILE.html|FILE.pdf [options]

Writes the testing sheet of one session: the folder holds its recordings and, best, a session.json.

  --out FILE           ends in .html or .pdf; written whole or not at all, never over an input, for its owner
                       alone to read

${statingHelp}
  --layout FILE        a saved layout; it answers for every file of its shape and for no other

Examples:
  counterpoise sheet month-7 --out month-7.pdf
  counterpoise sheet month-7 --involved right --out month-7.html

${exitHelp}
`;
