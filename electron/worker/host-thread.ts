import { Worker } from "node:worker_threads";
import type { HostRequestName } from "../boundary/host-api.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import type { GuardedFile } from "../threads/file-guard.ts";
import { hasTimeLimit, type WorkBudgets } from "./budgets.ts";
import { handOver } from "./hand-over.ts";
import type { HeldChange } from "./held-state.ts";
import type { HostWorkerStart, WorkerAnswer, WorkerWords } from "./messages.ts";

/** A request whose answer somebody waits for. */
export interface Waiting {
  readonly name: HostRequestName;
  readonly request: unknown;
  readonly resolve: (reply: unknown) => void;
  readonly reject: (reason: unknown) => void;
}

/** How a thread ended, with what was asked of it and not answered, in the order of asking. */
export interface ThreadEnd {
  readonly kind: "locked" | "memory" | "time" | "broken";
  readonly waiting: readonly Waiting[];
  /** The file it worked on, where it did. */
  readonly file: GuardedFile | undefined;
  /** What it broke on; absent where a budget or a person ended it. */
  readonly reason?: unknown;
}

export interface ThreadOptions {
  readonly budgets: WorkBudgets;
  /** The program of the thread. */
  readonly entry: URL;
}

/** What whoever starts a thread is told. */
export interface ThreadListener {
  held(change: HeldChange): void;
  /** Told once, when nothing of the thread is left: its memory is given back and its files are closed. */
  ended(end: ThreadEnd): void;
}

/** One life of the thread that holds the workspace. */
export class HostThread {
  readonly #worker: Worker;
  readonly #budgets: WorkBudgets;
  readonly #waiting = new Map<number, Waiting>();
  #lastId = 0;
  /** It has said something: what it takes to open a register counts for no request. */
  #isUp = false;
  #kind: ThreadEnd["kind"] = "broken";
  #reason: unknown = new Error("The thread that holds the recordings has ended.");
  #file: GuardedFile | undefined;
  #clock: NodeJS.Timeout | undefined;

  constructor(data: HostWorkerStart, { budgets, entry }: ThreadOptions, listener: ThreadListener) {
    this.#budgets = budgets;
    const worker = new Worker(entry, {
      workerData: data,
      resourceLimits: { maxOldGenerationSizeMb: budgets.heapMegabytes },
    });
    this.#worker = worker;
    worker.on("message", (words: WorkerWords) => this.#hear(words, listener));
    worker.on("error", (reason: NodeJS.ErrnoException) => {
      if (reason.code === "ERR_WORKER_OUT_OF_MEMORY") this.#kind = "memory";
      else this.#reason = reason;
    });
    worker.on("exit", () => {
      clearTimeout(this.#clock);
      const waiting = [...this.#waiting.values()];
      const reason = this.#kind === "broken" ? { reason: this.#reason } : {};
      listener.ended({ kind: this.#kind, waiting, file: this.#file, ...reason });
    });
  }

  ask(asked: Waiting): void {
    const { request, transfer } = handOver(asked.name, asked.request);
    this.#lastId += 1;
    this.#waiting.set(this.#lastId, asked);
    this.#worker.postMessage({ id: this.#lastId, name: asked.name, request }, [...transfer]);
    if (this.#waiting.size === 1) this.#windUp();
  }

  async end(): Promise<void> {
    await this.#worker.terminate();
  }

  #hear(words: WorkerWords, listener: ThreadListener): void {
    this.#isUp = true;
    if (words.kind === "held") listener.held(words.change);
    else if (words.kind === "working") this.#file = words.file;
    else if (words.kind === "locked") this.#endAs("locked");
    else this.#answer(words);
    this.#windUp();
  }

  #answer(answer: WorkerAnswer): void {
    const asked = this.#waiting.get(answer.id);
    this.#waiting.delete(answer.id);
    this.#file = undefined;
    if (answer.kind === "done") asked?.resolve(answer.reply);
    else if (answer.kind === "refused") asked?.reject(new RequestRefused(answer.message));
    else asked?.reject(new Error(answer.stack));
  }

  /** Each sign of life gives what is asked first the whole time again: it goes on to the next file. */
  #windUp(): void {
    clearTimeout(this.#clock);
    const [first] = this.#waiting.values();
    const isOver = this.#kind !== "broken";
    if (first === undefined || isOver || !this.#isUp || !hasTimeLimit(first.name)) return;
    this.#clock = setTimeout(() => this.#endAs("time"), this.#budgets.milliseconds);
  }

  #endAs(kind: ThreadEnd["kind"]): void {
    this.#kind = kind;
    void this.#worker.terminate();
  }
}
