import { SessionWork } from "./session-work.ts";
import type { JobAnswers, JobRequest } from "./worker-messages.ts";

/** Does what is asked, on whatever thread it stands; the session opened last is the one worked on. */
export class JobHands {
  #work: SessionWork | undefined;

  do(request: JobRequest): JobAnswers[keyof JobAnswers] {
    if (request.kind === "open") {
      this.#work = new SessionWork(request.session);
      return null;
    }
    const work = this.#work;
    if (work === undefined) throw new Error("No session was opened.");
    if (request.kind === "weigh") return request.paths.map((path) => work.weigh(path));
    return request.files.map(({ path, sha256 }) => ({ path, trials: work.analyze(path, sha256, request.weight) }));
  }
}
