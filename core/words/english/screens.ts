import { archives } from "./screens/archives.ts";
import { athleteRecord } from "./screens/athlete-record.ts";
import { athletesList } from "./screens/athletes-list.ts";
import { backups } from "./screens/backups.ts";
import { cautionForms } from "./screens/caution-forms.ts";
import { cautions } from "./screens/cautions.ts";
import { commonWords } from "./screens/common-words.ts";
import { counts } from "./screens/counts.ts";
import { erasing } from "./screens/erasing.ts";
import { frame } from "./screens/frame.ts";
import { limits } from "./screens/limits.ts";
import { lock } from "./screens/lock.ts";
import { notices } from "./screens/notices.ts";
import { protocols } from "./screens/protocols.ts";
import { recordFields } from "./screens/record-fields.ts";
import { recordingQuestions } from "./screens/recording-questions.ts";
import { recordingReading } from "./screens/recording-reading.ts";
import { recordingRows } from "./screens/recording-rows.ts";
import { recordingsIntake } from "./screens/recordings-intake.ts";
import { registerWords } from "./screens/register-words.ts";
import { sessionStatements } from "./screens/session-statements.ts";
import { sheetScreen } from "./screens/sheet-screen.ts";
import { sides } from "./screens/sides.ts";
import { steps } from "./screens/steps.ts";
import { timeline } from "./screens/timeline.ts";
import { traceTables } from "./screens/trace-tables.ts";
import { traces } from "./screens/traces.ts";
import { watch } from "./screens/watch.ts";

/** What the screens say, by panel. */
export const screens = {
  archives,
  athleteRecord,
  athletesList,
  backups,
  cautionForms,
  cautions,
  commonWords,
  counts,
  erasing,
  frame,
  limits,
  lock,
  notices,
  protocols,
  recordFields,
  recordingQuestions,
  recordingReading,
  recordingRows,
  recordingsIntake,
  registerWords,
  sessionStatements,
  sheetScreen,
  sides,
  steps,
  timeline,
  traceTables,
  traces,
  watch,
};
