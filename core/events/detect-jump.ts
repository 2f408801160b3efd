import type { Side } from "../limb.ts";
import type { Settings } from "../settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { type ForceSignal, maximumForce, minimumIndex } from "../trial/force-signal.ts";
import { contactEdge, emptyLevel } from "./contact-edge.ts";
import { editedSample } from "./edit-events.ts";
import type { EventEdit } from "./event.ts";
import type { JumpEvents, JumpMotion, LimbContact } from "./jump-events.ts";
import { anchored, integrate, type Kinematics, lastSample, stillOver, velocityAt } from "./kinematics.ts";
import { findOnset, onsetBand } from "./onset.ts";
import { lowestPositionIndex, lowestVelocityIndex, velocityCrossing, weightCrossing } from "./turning-points.ts";
import type { Weighing } from "./weigh.ts";

/** Body weight as the detectors need it; `weighing` is absent when the mass was entered and nobody stood still. */
export interface DetectionWeight {
  readonly newtons: number;
  readonly weighing?: Weighing;
}

/** The force of one limb on its own plate. */
export interface LimbSignal extends ForceSignal {
  readonly side: Side;
}

/** Why events could not be found; `where` is in seconds from the first sample. */
export interface Undetected {
  readonly missing: "onset" | "turning point" | "take-off";
  readonly atSample: number;
}

/** Roots are looked for this far around the sample that a search found. */
const rootReachSeconds = 0.05;

/**
 * Finds the events of a countermovement jump in the order of METHODS §3: motion, lowest position, most negative
 * velocity, unweighting minimum, onset backwards from it, contact events, landing end.
 */
export function detectJump(
  total: ForceSignal,
  limbs: readonly LimbSignal[],
  cut: JumpCut,
  weight: DetectionWeight,
  edits: readonly EventEdit[],
  settings: Settings,
): JumpMotion | Undetected {
  const window = weight.weighing?.window;
  const start = window?.start ?? cut.quietBefore[0]?.start ?? cut.span.start;
  const raw = integrate(total, { start, end: cut.span.end }, weight.newtons, settings.gravity);
  const moving = window === undefined ? raw : stillOver(raw, window);
  const earliest = window?.end ?? start;

  const dip = findDip(moving, earliest, cut.flight.start - 1, settings);
  const band = onsetBand(weight.newtons, weight.weighing?.deviation ?? 0, settings);
  const detectedOnset = findOnset(
    total.force,
    total.rateHz,
    dip.minimum,
    window?.start ?? start,
    weight.newtons,
    band,
    settings,
  );
  const onset = editedSample(edits, "onset", total.rateHz) ?? detectedOnset;
  if (onset === undefined) return { missing: "onset", atSample: dip.minimum };
  const motion =
    window === undefined
      ? anchored(moving, onset, { velocity: 0, position: 0 })
      : anchored(moving, onset, { position: 0 });

  // Without a weighing window the velocity is only known from the onset on, so the dip is looked for again.
  const turn = window === undefined ? findDip(motion, Math.ceil(onset), cut.flight.start - 1, settings) : dip;
  const reach = Math.ceil(rootReachSeconds * total.rateHz);
  const endOfUnweighting = weightCrossing(motion, turn.fastest, reach);
  const lowestPosition = velocityCrossing(motion, turn.lowest, reach);
  if (endOfUnweighting === undefined || lowestPosition === undefined || endOfUnweighting >= lowestPosition) {
    return { missing: "turning point", atSample: turn.lowest };
  }
  const takeoff = leaveEdge(total, Math.ceil(lowestPosition), cut, weight.newtons, settings);
  if (takeoff === undefined) return { missing: "take-off", atSample: cut.flight.start };
  const touchdown = cut.landed ? touchEdge(total, cut, weight.newtons, settings) : undefined;
  const events = withEdits(
    { onset, endOfUnweighting, lowestPosition, takeoff, ...(touchdown === undefined ? {} : { touchdown }) },
    motion,
    edits,
  );
  const contacts = limbs.map((limb) => limbContact(limb, events, cut, weight.newtons, settings));
  return { motion, events, contacts };
}

/** Turning points at sample resolution: lowest position, most negative velocity and force minimum before it. */
function findDip(motion: Kinematics, from: number, to: number, settings: Settings) {
  const lowest = lowestPositionIndex(motion, from, to);
  const fastest = lowestVelocityIndex(motion, from, lowest);
  const search = Math.round(settings.dipSearchSeconds * motion.signal.rateHz);
  const minimum = minimumIndex(motion.signal.force, Math.max(from, fastest - search), fastest + 1);
  return { lowest, fastest, minimum };
}

function middleOf(cut: JumpCut): number {
  return Math.floor((cut.flight.start + cut.flight.end) / 2);
}

function leaveEdge(
  signal: ForceSignal,
  from: number,
  cut: JumpCut,
  weightNewtons: number,
  settings: Settings,
): number | undefined {
  return contactEdge(signal, from, middleOf(cut), 1, emptyLevel(signal, cut.flight), weightNewtons, settings);
}

function touchEdge(signal: ForceSignal, cut: JumpCut, weightNewtons: number, settings: Settings): number | undefined {
  const latest = Math.min(
    signal.force.length - 1,
    cut.flight.end + Math.round(settings.landingPeakSeconds * signal.rateHz),
  );
  const peak = Math.round(maximumForce(signal, Math.min(cut.flight.end, latest), latest).sample);
  return contactEdge(signal, peak, middleOf(cut), -1, emptyLevel(signal, cut.flight), weightNewtons, settings);
}

function limbContact(
  limb: LimbSignal,
  events: JumpEvents,
  cut: JumpCut,
  weightNewtons: number,
  settings: Settings,
): LimbContact {
  const takeoff = leaveEdge(limb, Math.ceil(events.lowestPosition), cut, weightNewtons, settings);
  const touchdown = cut.landed ? touchEdge(limb, cut, weightNewtons, settings) : undefined;
  return {
    side: limb.side,
    ...(takeoff === undefined ? {} : { takeoff }),
    ...(touchdown === undefined ? {} : { touchdown }),
  };
}

/** Puts moved events in, each clamped between its neighbours, and finds the landing end that follows from them. */
function withEdits(
  detected: Omit<JumpEvents, "landingEnd">,
  motion: Kinematics,
  edits: readonly EventEdit[],
): JumpEvents {
  const { rateHz } = motion.signal;
  const moved = (name: EventEdit["name"], own: number, low: number, high: number): number => {
    const wanted = editedSample(edits, name, rateHz);
    return wanted === undefined ? own : Math.min(high, Math.max(low, wanted));
  };
  const end = lastSample(motion);
  const endOfUnweighting = moved(
    "endOfUnweighting",
    detected.endOfUnweighting,
    detected.onset,
    detected.lowestPosition,
  );
  const lowestPosition = moved("lowestPosition", detected.lowestPosition, endOfUnweighting, detected.takeoff);
  const takeoff = moved("takeoff", detected.takeoff, lowestPosition, detected.touchdown ?? end);
  const onset = Math.min(detected.onset, endOfUnweighting);
  const standing = { onset, endOfUnweighting, lowestPosition, takeoff };
  if (detected.touchdown === undefined) return standing;
  const touchdown = moved("touchdown", detected.touchdown, takeoff, end);
  const detectedEnd = landingEndAfter(motion, touchdown);
  const wantedEnd = editedSample(edits, "landingEnd", rateHz);
  const landingEnd = wantedEnd === undefined ? detectedEnd : Math.min(end, Math.max(touchdown, wantedEnd));
  return { ...standing, touchdown, ...(landingEnd === undefined ? {} : { landingEnd }) };
}

/** First rise of velocity through zero after touchdown. */
function landingEndAfter(motion: Kinematics, touchdown: number): number | undefined {
  const last = Math.floor(lastSample(motion));
  for (let index = Math.ceil(touchdown); index < last; index += 1) {
    if (velocityAt(motion, index) < 0 && velocityAt(motion, index + 1) >= 0) return velocityCrossing(motion, index, 0);
  }
  return undefined;
}
