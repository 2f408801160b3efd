import { asymmetryChecks } from "./checks/asymmetry-checks.ts";
import { criteriaChecks } from "./checks/criteria-checks.ts";
import { dropChecks } from "./checks/drop-checks.ts";
import { filterChecks } from "./checks/filter-checks.ts";
import { gravityChecks } from "./checks/gravity-checks.ts";
import { hopChecks } from "./checks/hop-checks.ts";
import { agrees, type CheckGroup, type PublishedCheck } from "./checks/published-check.ts";
import { ratioChecks } from "./checks/ratio-checks.ts";
import { scipyChecks } from "./checks/scipy-checks.ts";
import { standingJumpChecks } from "./checks/standing-jump-checks.ts";

/** Every outside check, in the order of the table. */
export const checkGroups: readonly CheckGroup[] = [
  gravityChecks,
  filterChecks,
  scipyChecks,
  standingJumpChecks,
  dropChecks,
  hopChecks,
  asymmetryChecks,
  ratioChecks,
  criteriaChecks,
];

/** One line of the table: the cells as text. */
export interface ValidationRow {
  readonly subject: string;
  readonly check: string;
  readonly source: string;
  readonly expected: string;
  readonly ours: string;
  readonly difference: string;
  readonly tolerance: string;
  readonly verdict: "agrees" | "differs";
}

/** Works every check out. */
export function validationRows(): readonly ValidationRow[] {
  return checkGroups.flatMap(({ subject, checks }) => checks.map((check) => rowOf(subject, check)));
}

function rowOf(subject: string, check: PublishedCheck): ValidationRow {
  const ours = check.ours();
  const { expected, tolerance, unit } = check;
  const inUnit = (text: string): string => (unit === "1" ? text : `${text} ${unit}`);
  const decimals = decimalsFor(check);
  return {
    subject,
    check: check.check,
    source: check.source,
    expected: inUnit(plain(expected, decimals)),
    ours: inUnit(plain(ours, decimals)),
    difference: inUnit(plain(ours - expected, decimals)),
    tolerance: tolerance === 0 ? "exact" : inUnit(shortest(tolerance)),
    verdict: agrees(check, ours) ? "agrees" : "differs",
  };
}

/** One digit more than the tolerance, so that rounding in the last bits never shows; whole values as they are. */
function decimalsFor({ expected, tolerance }: PublishedCheck): number {
  if (tolerance === 0) return (String(expected).split(".")[1] ?? "").length;
  return Math.max(0, Math.ceil(-Math.log10(tolerance)) + 1);
}

function plain(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

function shortest(value: number): string {
  return value >= 0.001 ? String(Number(value.toPrecision(2))) : value.toExponential();
}

const head = `# Outside checks

What others published, what anybody can work out by hand, and what other software computes, held against what the
program makes of the same. \`npm run validate\` writes this file; a test keeps it true.

- **Source**: *read* means that the statement was read in the source it names, *from memory* that it was not read again
  for this check, *common practice* that no source is claimed. *Worked out by hand* follows from the formula beside it.
- **Verdict**: *agrees* where the difference is within the tolerance, otherwise *differs*.
- Units are UCUM. Differences smaller than a tenth of the tolerance may show as zero.
- Beside these, \`tests/oracle\` holds a second implementation of the methods in plain loops, with which the program
  agrees on every event and value of noise-free trials to 1e-9, and \`tests/worked\` two trials worked to seven digits.
`;

/** The whole file, the same on every machine. */
export function validationDocument(rows: readonly ValidationRow[]): string {
  const subjects = [...new Set(rows.map((row) => row.subject))];
  const sections = subjects.map((subject) => {
    const lines = rows.filter((row) => row.subject === subject).map(lineOf);
    return `## ${subject}\n\n${columns}\n${lines.join("\n")}\n`;
  });
  const differing = rows.filter((row) => row.verdict === "differs").length;
  const sum = `${rows.length} checks: ${rows.length - differing} agree, ${differing} differ.\n`;
  return [head, sum, ...sections].join("\n");
}

const columns = `| check | source | expected | ours | difference | tolerance | verdict |
|---|---|---:|---:|---:|---:|---|`;

function lineOf({ check, source, expected, ours, difference, tolerance, verdict }: ValidationRow): string {
  const cells = [check, source, expected, ours, difference, tolerance, verdict];
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
}
