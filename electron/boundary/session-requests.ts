import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import type { TrialTrace } from "../../core/session/trace-trial.ts";
import type { SheetDocument } from "../../core/sheet/document.ts";
import { alignments, type CurveOverlay } from "../../core/sides/curves.ts";
import { dropHeight, legs, side, testKind } from "../../core/stated/schema-parts.ts";
import { cautionAdditionSchema } from "../cautions/caution-addition.ts";
import type { MadeFile } from "./made-file.ts";
import { nothing, request } from "./request.ts";
import { file, files, folder, started, trial } from "./request-parts.ts";
import { sessionChangeSchema, statedPlates, trialChangeSchema, trialDecisionSchema } from "./stated-changes.ts";
import type { Workspace } from "./workspace-view.ts";

/** Which step is meant; without a number the one that is offered, whatever it is. */
const stepRequest = z.strictObject({
  /** The session the asking screen shows; absent: the one shown last. */
  folder: folder.exactOptional(),
  step: z.int().min(1).exactOptional(),
  /** The person agreed that it changes more than the session shown. */
  agreed: z.boolean().exactOptional(),
});

export type StepRequest = SchemaType<typeof stepRequest>;

/** What is open, what is stated about it and what comes of it. */
export const sessionRequests = {
  "application.describe": request(nothing).replies<{
    readonly version: string;
    readonly host: "window" | "browser";
    /** The key store of the operating system for the register's passphrase: whether there is one, and holds it. */
    readonly passphraseStore: "absent" | "empty" | "holds it";
  }>(),
  "workspace.read": request(nothing).replies<Workspace>(),
  /** Opens the simulated demo world, leaving what was open. */
  "workspace.openDemo": request(nothing).replies<Workspace>(),
  /** Closes everything, ready for recordings. */
  "workspace.clear": request(nothing).replies<Workspace>(),
  "workspace.show": request(z.strictObject({ folder })).replies<Workspace>(),
  "workspace.undo": request(stepRequest).replies<Workspace>(),
  "workspace.redo": request(stepRequest).replies<Workspace>(),
  "session.change": request(z.strictObject({ folder, change: sessionChangeSchema, ...started })).replies<Workspace>(),
  /**
   * Adds answers to the cautions, readings of pain and effusion, or the named clinician's opening. They are kept for good
   * and are no step that can be taken back.
   */
  "cautions.add": request(z.strictObject({ folder, addition: cautionAdditionSchema })).replies<Workspace>(),
  "trials.change": request(
    z.strictObject({ folder, file, trial, change: trialChangeSchema, ...started }),
  ).replies<Workspace>(),
  /** Decides about several trials in one step: keeps them although their weight differs, or excludes them. */
  "trials.keepOrExclude": request(
    z.strictObject({
      folder,
      trials: z.array(z.strictObject({ file, trial })).min(1).max(10_000),
      decision: trialDecisionSchema,
    }),
  ).replies<Workspace>(),
  /**
   * States which foot stood on which column in all trials of some files, as one step that can be taken back. `swap`
   * turns what each file's plates are now taken for; a side says which foot stood on plate 1, the first in the order of
   * each file; an empty list takes the statement away.
   */
  "trials.statePlates": request(
    z.strictObject({ folder, files, feet: z.union([z.literal("swap"), side, statedPlates]), ...started }),
  ).replies<Workspace>(),
  "trials.trace": request(z.strictObject({ folder, file, trial })).replies<TrialTrace>(),
  /** Without an overlay when a side has no trial to draw. */
  "sides.curves": request(
    z.strictObject({
      folder,
      test: testKind,
      legs,
      alignedAt: z.enum(alignments),
      /** Only trials from this box. */
      dropHeightMetres: dropHeight.exactOptional(),
      /** Only trials in which this leg stepped off the box first. */
      leadingLeg: side.exactOptional(),
    }),
  ).replies<{ readonly overlay?: CurveOverlay }>(),
  "sheet.read": request(z.strictObject({ folder })).replies<SheetDocument>(),
  /** `json` and `csv` are the result document of the session; `session` is its session.json with all decisions. */
  "files.make": request(
    z.strictObject({ folder, format: z.enum(["pdf", "html", "csv", "json", "session"]) }),
  ).replies<MadeFile>(),
};
