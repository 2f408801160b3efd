import type { Settings } from "../settings/settings.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import type { DetectionInput } from "./detection.ts";
import { withSpreads } from "./edge-spread.ts";
import { entryPushStart } from "./entry-push.ts";
import type { TrialEvent } from "./event.ts";
import { edgeUncertainty, type InputUncertainties } from "./input-uncertainties.ts";
import type { JumpMotion, LimbContact } from "./jump-events.ts";
import { limbContacts } from "./limb-contacts.ts";

/**
 * When each limb left and met its own plate in repeated hops, limb by limb in order of time: the rules of every limb
 * event, each edge counted from the empty level of the flight beside it. Numbered like the contacts of the whole body.
 * @returns none on one plate, on one leg and in every other test
 */
export function hopLimbEvents(
  jump: JumpMotion,
  input: DetectionInput,
  inputs: InputUncertainties,
  settings: Settings,
): readonly TrialEvent[] {
  const { hops, ...withoutHops } = jump;
  if (hops === undefined || input.limbs.length === 0) return [];
  const { rateHz } = jump.motion.signal;
  const firstNumber = hops.entryTakeoff === undefined ? 1 : 0;
  const around = aroundFlights(input, settings).map((own) => {
    const contacts = limbContacts(own);
    return withSpreads({ ...withoutHops, events: {}, contacts }, own).contacts;
  });
  return input.limbs.flatMap(({ side }) =>
    around.flatMap((limbs, index): TrialEvent[] => {
      const limb = limbs.find((each) => each.side === side);
      if (limb === undefined) return [];
      const before = firstNumber + index;
      const event = (key: keyof typeof names, contactIndex: number): readonly TrialEvent[] =>
        eventOf(limb, key, contactIndex, rateHz, inputs);
      return [...event("contactTouchdown", before), ...event("takeoff", before), ...event("touchdown", before + 1)];
    }),
  );
}

const names = { contactTouchdown: "touchdown", takeoff: "takeoff", touchdown: "touchdown" } as const;

function eventOf(
  limb: LimbContact,
  key: keyof typeof names,
  contactIndex: number,
  rateHz: number,
  inputs: InputUncertainties,
): readonly TrialEvent[] {
  const sample = limb[key];
  if (sample === undefined) return [];
  return [
    {
      name: names[key],
      sample,
      time: sample / rateHz,
      from: "detected",
      uncertainty: edgeUncertainty(inputs, key, limb.spreads) / rateHz,
      // The entry jump's take-off belongs to no contact.
      ...(contactIndex === 0 ? {} : { contactIndex }),
      side: limb.side,
    },
  ];
}

/** The bout as one jump a flight: the contact before it, and the contact after it as its landing. */
function aroundFlights(input: DetectionInput, settings: Settings): readonly DetectionInput[] {
  const { fall, ...cut } = input.cut;
  const flights = [cut.flight, ...cut.laterFlights];
  return flights.map((flight, index) => {
    const next = flights[index + 1];
    const landing = next === undefined ? cut.lastLanding : { start: flight.end, end: next.start };
    const first = index === 0;
    const start = first
      ? (fall?.end ?? entryPushStart(cut.contact, flight, input.total.rateHz, settings))
      : flights[index - 1]!.end;
    const contact: SampleSpan = { start, end: flight.start };
    const own = { ...cut, contact, flight, landing, landed: landing.end > landing.start };
    return { ...input, cut: first && fall !== undefined ? { ...own, fall } : own };
  });
}
