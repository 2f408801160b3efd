import { analyzeElsewhere } from "../../core/analyze.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { FileMapper, WeighedFile } from "../../core/session/file-mapper.ts";
import type { SessionInput } from "../../core/session/session-input.ts";
import type { Settings } from "../../core/settings/settings.ts";
import { type ListedSession, readDescription } from "../files/read-folder.ts";
import type { Crew, CrewMember } from "./crew.ts";
import type { FirstPass } from "./session-work.ts";
import { share } from "./share-work.ts";

/** How far a session has come: each file is passed twice. */
export interface SessionProgress {
  readonly passes: number;
  readonly allPasses: number;
}

/**
 * Analyses a listed session with everybody of the crew, reading each file where it is worked on. The result is that of
 * `analyzeSession` over the same files, bit for bit, however many share the work.
 */
export async function analyzeListed(
  listed: ListedSession,
  stated: Pick<SessionInput, "stated" | "layouts">,
  settings: Settings,
  crew: Crew,
  onProgress: (progress: SessionProgress) => void = () => {},
): Promise<SessionResult> {
  const statements = { folder: listed.folder, ...readDescription(listed), ...stated };
  return analyzeElsewhere(statements, settings, mapperOfCrew(listed, crew, onProgress));
}

/** A file with who passed it first. */
interface PassedFile extends WeighedFile {
  readonly doneBy: CrewMember | undefined;
}

function mapperOfCrew(
  { directory, names, unreadable: unlisted }: ListedSession,
  crew: Crew,
  onProgress: (progress: SessionProgress) => void,
): FileMapper<PassedFile> {
  let passes = 0;
  const passed = (files: number): void => {
    passes += files;
    onProgress({ passes, allPasses: 2 * names.length });
  };
  return {
    // Each file leaves behind only what the session's weight is made from.
    weighFiles: async (statements, settings) => {
      // Nobody waits for the others: who has opened the session begins with the files at once.
      const opened = everybody(crew, (member) =>
        member.ask({ kind: "open", session: { directory, statements, settings } }),
      );
      const firstPass = share(crew, names, async (member, paths) => {
        const answer = await member.ask({ kind: "weigh", paths });
        passed(paths.length);
        return answer;
      });
      const [{ items, doneBy }] = await Promise.all([firstPass, opened]);
      const unreadable = items.flatMap((each) => (each.kind === "unreadable" ? [each] : []));
      return {
        files: items.filter(isRecording).map((file) => ({ ...file, doneBy: doneBy.get(file.path) })),
        unreadable: [...unlisted, ...unreadable.map(({ path, reason }) => ({ path, reason }))],
      };
    },
    // The same member takes a file again, because it may have kept its drafts.
    analyzeFiles: async (files, { predictions, borneOut, notPooled }) => {
      const weight = { predictions, borneOut, ...(notPooled === undefined ? {} : { notPooled }) };
      const { items } = await share(
        crew,
        files,
        async (member, some) => {
          const named = some.map(({ path, sha256 }) => ({ path, sha256 }));
          const answer = await member.ask({ kind: "analyze", files: named, weight });
          passed(some.length);
          return answer;
        },
        ({ doneBy }) => doneBy,
      );
      const trials = new Map(items.map((each) => [each.path, each.trials]));
      return files.flatMap(({ path }) => trials.get(path) ?? []);
    },
  };
}

function isRecording(pass: FirstPass): pass is FirstPass & { readonly kind: "recording" } {
  return pass.kind === "recording";
}

async function everybody(crew: Crew, ask: (member: CrewMember) => Promise<unknown>): Promise<void> {
  await Promise.all(crew.members.map(ask));
}
