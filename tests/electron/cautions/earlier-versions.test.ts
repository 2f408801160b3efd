import { expect, test } from "vitest";
import { gateOf } from "../../../core/gate/gate.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { sessionSchema } from "../../../core/stated/session.ts";
import { parseSessionFile } from "../../../core/stated/session-file.ts";
import { describeSession } from "../../../electron/register/describe-session.ts";
import type { RecordContent } from "../../../electron/register/record-schemas.ts";
import { recordSchemas } from "../../../electron/register/record-schemas.ts";
import { testRegister } from "../register/register-world.ts";

const date = "2026-10-13";

/** As the version before answers acted wrote it. */
const earlierFile = `{
  "athlete": { "code": "GH-07", "name": "Maren Tveitlund" },
  "involved": "right",
  "injury": "Right knee, reconstructed with a hamstring graft.",
  "date": "${date}",
  "massKg": 68.6,
  "pain": 1,
  "effusion": "none",
  "stopped": { "reason": "time was up" },
  "cautions": { "answeredBy": "K. L.", "date": "${date}", "note": "nothing to report" },
  "simulated": true
}
`;

test("A session.json of the version before opens as it was, says that somebody asked, and is not open without answers", () => {
  const { description, findings } = parseSessionFile(new TextEncoder().encode(earlierFile));
  expect(findings).toEqual([]);
  expect(description).toEqual(JSON.parse(earlierFile));
  const gate = gateOf(description, defaultSettings);
  expect(gate.closures.map(({ code }) => code)).toEqual(["session-stopped", "cautions-not-asked"]);
  expect(gate.day).toMatchObject({ knee: 1, effusion: "none" });
});

/** A session's record as that version kept it, with the questions as they were then asked. */
const earlierSession: RecordContent<"sessions"> = {
  folder: "month-7",
  date,
  involved: "right",
  pain: { before: 2, during: 6, after: 1, nextDay: 9 },
  effusion: { before: "trace", nextDay: "2+" },
  cautions: [
    {
      before: "session",
      answeredBy: "K. L.",
      date,
      at: "2026-10-13T07:40:00.000Z",
      answers: [
        { question: "Pain now, 0 to 10", answer: "2" },
        { question: "Effusion now", answer: "trace" },
        { question: "Fever, or problems of the wound?", answer: "no" },
        { question: "Has the knee given way or locked since the last session?", answer: "yes" },
        { question: "Does a restriction by the surgeon speak against today's jumps?", answer: "no" },
        { question: "No practice in landing during the last two weeks?", answer: "yes" },
      ],
    },
    { before: "drop tests", answeredBy: "K. L.", date },
  ],
};

async function keptEarlier() {
  expect(recordSchemas.sessions.safeParse(earlierSession).success).toBe(true);
  const register = await testRegister();
  const session = register.writes.act("session added", (changes) => changes.add("sessions", {}, earlierSession));
  return { register, session };
}

test("A register's session of the version before keeps its worst day, and its answers act as far as they were asked", async () => {
  const { register, session } = await keptEarlier();
  const { description } = register.reads.sessionInput(session)!;
  const gate = gateOf(description, defaultSettings);
  expect(gate.day).toMatchObject({ knee: 6, effusion: "trace" });
  expect(gate.answered.against.map(({ name }) => name)).toEqual(["givingWay", "locking", "landingPractice"]);
  // What was never asked stays open: an illness, the calf.
  expect(gate.answered.openAtFirst).toEqual(["new injury or illness", "calf pain or breathlessness"]);
});

test("A later statement about such a session leaves what it kept as it was", async () => {
  const { register, session } = await keptEarlier();
  const { description } = register.reads.sessionInput(session)!;
  // A form can hand it back as what it began with.
  expect(sessionSchema.parse(description)).toEqual(description);
  describeSession(register, session, { ...description, milestone: "month 7" }, "session changed");
  expect(register.reads.record("sessions", session)?.content).toEqual({ ...earlierSession, milestone: "month 7" });
});
