import { isOfLimb, type TrialEvent } from "../../core/events/event.ts";
import type { Bearer, InvolvedSide } from "../../core/ground/limb.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { bearerRole } from "../shell/limb-role.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { secondsText } from "./event-move.ts";
import { eventWords } from "./event-words.ts";

const prose = words.screens.traceTables;

interface LimbEventsProps {
  readonly trial: TrialResult;
  readonly involved: InvolvedSide | undefined;
}

/** When each limb left and met its own plate. */
export function LimbEvents({ trial, involved }: LimbEventsProps) {
  const ofLimbs = trial.events.filter(isOfLimb);
  const names = [...new Set(ofLimbs.map((event) => eventWords(event, trial.test)))];
  return names.map((name) => (
    <span key={name}>
      {prose.eventOfEach(sentenceCase(name), trial.feet === undefined ? prose.limb : prose.plate)}{" "}
      {ofLimbs
        .filter((event) => eventWords(event, trial.test) === name)
        .map((event, index) => {
          const bearer = eventBearer(event);
          return (
            <span key={words.limbs.bearer(bearer)}>
              {index > 0 && ", "}
              <span className={`limb-${bearerRole(bearer, involved)}`}>{words.limbs.bearer(bearer)}</span>{" "}
              {prose.secondsAt(secondsText(event.time))}
            </span>
          );
        })}
      .{" "}
    </span>
  ));
}

function eventBearer({ side, plate }: TrialEvent): Bearer {
  return plate === undefined ? { side: side ?? "both" } : { plate };
}
