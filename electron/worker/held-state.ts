import type { Stated, StoredSession } from "../files/stored-session.ts";
import type { HeldRegister } from "../register-host/held-register.ts";
import type { HeldWatch } from "../watch/held-watch.ts";
import type { NumberedStep } from "../workspace/edit-history.ts";
import type { HeldWorkspace } from "../workspace/held-workspace.ts";
import { heardParts, type PartsChange, ToldParts } from "./told-parts.ts";

export interface HeldState {
  readonly workspace: HeldWorkspace;
  readonly register?: HeldRegister;
  /** Absent while no folder is watched. */
  readonly watch?: HeldWatch;
}

type Rest = Omit<HeldWorkspace, "sessions" | "takenAlong" | "history"> & {
  readonly history: { readonly done: readonly number[]; readonly undone: readonly number[]; readonly steps: number };
  readonly register: HeldRegister | undefined;
  readonly watch: HeldWatch | undefined;
};

/** What of the held state changed. */
export interface HeldChange {
  readonly sessions: PartsChange<StoredSession> | undefined;
  readonly takenAlong: PartsChange<Stated["description"]> | undefined;
  readonly steps: PartsChange<NumberedStep> | undefined;
  readonly rest: Rest;
}

/** On the working thread: says what changed since the last time. */
export class HeldTeller {
  readonly #sessions = new ToldParts<StoredSession>();
  readonly #takenAlong = new ToldParts<Stated["description"]>();
  readonly #steps = new ToldParts<NumberedStep>();
  #rest = "";

  /** @returns undefined where nothing did */
  change({ workspace, register, watch }: HeldState): HeldChange | undefined {
    const { sessions, takenAlong, history, ...others } = workspace;
    const numbers = (steps: readonly NumberedStep[]) => steps.map(({ number }) => number);
    const change: HeldChange = {
      sessions: this.#sessions.change(sessions.map((session) => [session.folder, session])),
      takenAlong: this.#takenAlong.change(takenAlong),
      steps: this.#steps.change([...history.done, ...history.undone].map((step) => [`${step.number}`, step])),
      rest: {
        ...others,
        history: { done: numbers(history.done), undone: numbers(history.undone), steps: history.steps },
        register,
        watch,
      },
    };
    const rest = JSON.stringify(change.rest);
    const isNews = rest !== this.#rest || (change.sessions ?? change.takenAlong ?? change.steps) !== undefined;
    this.#rest = rest;
    return isNews ? change : undefined;
  }
}

/** On the thread that stays: knows the state as it was told last. Bytes of recordings are shared, not copied. */
export class HeldListener {
  #sessions: ReadonlyMap<string, StoredSession> = new Map();
  #takenAlong: ReadonlyMap<string, Stated["description"]> = new Map();
  #steps: ReadonlyMap<string, NumberedStep> = new Map();
  #rest: Rest | undefined;

  hear({ sessions, takenAlong, steps, rest }: HeldChange): void {
    this.#sessions = heardParts(this.#sessions, sessions);
    this.#takenAlong = heardParts(this.#takenAlong, takenAlong);
    this.#steps = heardParts(this.#steps, steps);
    this.#rest = rest;
  }

  /** Undefined until something was told. */
  get state(): HeldState | undefined {
    if (this.#rest === undefined) return undefined;
    const { history, register, watch, ...others } = this.#rest;
    const steps = (numbers: readonly number[]) => numbers.flatMap((number) => this.#steps.get(`${number}`) ?? []);
    return {
      workspace: {
        ...others,
        sessions: [...this.#sessions.values()],
        takenAlong: [...this.#takenAlong],
        history: { done: steps(history.done), undone: steps(history.undone), steps: history.steps },
      },
      ...(register !== undefined && { register }),
      ...(watch !== undefined && { watch }),
    };
  }
}
