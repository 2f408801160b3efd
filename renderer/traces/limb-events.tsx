import type { InvolvedSide } from "../../core/limb.ts";
import type { TrialResult } from "../../core/result.ts";
import { limbRole } from "../shell/limb-role.ts";
import { sentenceCase } from "../shell/words.ts";
import { secondsText } from "./event-move.ts";
import { eventWords } from "./event-words.ts";

interface LimbEventsProps {
  readonly trial: TrialResult;
  readonly involved: InvolvedSide | undefined;
}

/** When each limb left and met its own plate. */
export function LimbEvents({ trial, involved }: LimbEventsProps) {
  const ofLimbs = trial.events.filter((event) => event.side !== undefined);
  const names = [...new Set(ofLimbs.map((event) => eventWords(event, trial.test)))];
  return names.map((name) => (
    <span key={name}>
      {sentenceCase(name)} of each limb:{" "}
      {ofLimbs
        .filter((event) => eventWords(event, trial.test) === name)
        .map((event, index) => (
          <span key={event.side}>
            {index > 0 && ", "}
            <span className={`limb-${limbRole(event.side ?? "both", involved)}`}>{event.side}</span>{" "}
            {secondsText(event.time)} s
          </span>
        ))}
      .{" "}
    </span>
  ));
}
