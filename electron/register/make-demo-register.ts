import type { FoundSession } from "../files/read-folder.ts";
import type { ChangeSet } from "./change-set.ts";
import { importSessions } from "./import-sessions.ts";
import { openRegister } from "./open-register.ts";
import type { RecordContent } from "./record-schemas.ts";
import type { Register } from "./register.ts";

/** What the demo world knows of its athletes beside the recordings. Everybody in it is invented. */
interface DemoHistory {
  readonly code: string;
  readonly athlete: Partial<RecordContent<"athletes">>;
  readonly injuries?: readonly RecordContent<"injuries">[];
  readonly operations?: readonly RecordContent<"operations">[];
  readonly entered?: readonly RecordContent<"enteredFindings">[];
}

const strength = (
  kind: "quadriceps strength" | "hamstrings strength",
  date: string,
  right: number,
  left: number,
): readonly RecordContent<"enteredFindings">[] =>
  [["right", right] as const, ["left", left] as const].map(([side, value]) => ({
    kind,
    date,
    side,
    value,
    unit: "N.m/kg",
    source: "isokinetic, 60 deg/s; simulated",
  }));

const readiness = (date: string, value: number): RecordContent<"enteredFindings"> => ({
  kind: "psychological readiness",
  date,
  value,
  source: "questionnaire, 0 to 100; simulated",
});

const involvedKnee = { bodyPart: "knee", involved: true } as const;

const histories: readonly DemoHistory[] = [
  {
    code: "GH-07",
    athlete: { heightMetres: 1.74, dominantSide: "right", note: "Invented. Jumps off the left leg." },
    injuries: [
      { side: "right", structure: "anterior cruciate ligament", date: "2026-01-17", ...involvedKnee },
      {
        side: "left",
        structure: "sprain",
        date: "2026-11-16",
        until: "2027-01-31",
        bodyPart: "ankle",
        involved: false,
      },
    ],
    operations: [
      {
        side: "right",
        procedure: "anterior cruciate ligament reconstruction",
        graft: "hamstring",
        date: "2026-03-12",
        repaired: "no",
        ...involvedKnee,
      },
    ],
    entered: [
      ...strength("quadriceps strength", "2026-10-13", 2.1, 2.62),
      ...strength("quadriceps strength", "2026-12-14", 2.38, 2.6),
      ...strength("quadriceps strength", "2027-02-11", 2.62, 2.72),
      ...strength("hamstrings strength", "2027-02-11", 1.42, 1.55),
      readiness("2026-07-14", 41),
      readiness("2026-08-27", 45),
      readiness("2026-10-13", 58),
      readiness("2026-12-14", 66),
      readiness("2027-02-11", 77),
    ],
  },
  {
    code: "GH-14",
    athlete: { heightMetres: 1.9, note: "Invented." },
    injuries: [{ side: "left", structure: "anterior cruciate ligament", date: "2026-03-07", ...involvedKnee }],
    operations: [
      {
        side: "left",
        procedure: "anterior cruciate ligament reconstruction",
        graft: "bone–tendon–bone",
        date: "2026-04-14",
        repaired: "no",
        ...involvedKnee,
      },
      { side: "right", procedure: "partial meniscectomy", date: "2022-09-15", bodyPart: "knee", involved: false },
    ],
  },
  { code: "GH-21", athlete: { nobodyInjured: "2026-11-09", note: "Invented. Never injured." } },
];

/**
 * Makes the demo world's register from its sessions.
 * @throws RequestRefused when the file cannot be written
 */
export async function makeDemoRegister(file: string, sessions: readonly FoundSession[]) {
  const register = await openRegister(file, { create: true });
  try {
    const imported = importSessions(register, sessions.map(withoutOperation));
    for (const history of histories) writeHistory(register, history);
    return {
      athletes: register.reads.athletes().length,
      sessions: imported.length,
      recordings: imported.reduce((sum, { recordings }) => sum + recordings, 0),
    };
  } finally {
    register.close();
  }
}

/** The operation is a record of the athlete there, so that it can be corrected in one place. */
function withoutOperation(found: FoundSession): FoundSession {
  const { operation: _operation, ...description } = found.description;
  return { ...found, description };
}

function writeHistory(register: Register, { code, athlete, injuries, operations, entered }: DemoHistory): void {
  const line = register.reads.athletes().find((each) => each.code === code);
  const record = line && register.reads.record("athletes", line.id);
  if (record === undefined) return;
  const owner = { athlete: record.id };
  register.writes.act("injury or operation changed", (changes: ChangeSet) => {
    changes.change("athletes", record.id, { ...record.content, ...athlete });
    const [injury] = (injuries ?? []).map((each) => changes.add("injuries", owner, each));
    for (const each of operations ?? []) {
      const isOfInjury = injury !== undefined && each.involved === true;
      changes.add("operations", isOfInjury ? { ...owner, injury } : owner, each);
    }
    for (const each of entered ?? []) changes.add("enteredFindings", owner, each);
  });
}
