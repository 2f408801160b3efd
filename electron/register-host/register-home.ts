import { chmodSync, existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import type { RegisterView } from "../boundary/register-view.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { keepDailyBackup } from "../register/backups.ts";
import { troubleWords } from "../register/kept-backups.ts";
import { machineCircumstances, openRegister } from "../register/open-register.ts";
import type { Register } from "../register/register.ts";
import type { Circumstances } from "../register/register-writes.ts";
import type { SessionWatch } from "../watch/session-watch.ts";
import type { StepReach } from "../workspace/edit-history.ts";
import type { WorkspaceState } from "../workspace/workspace.ts";
import { ConversionRunner } from "./conversion-runner.ts";
import { copyDemo, removeCopy } from "./demo-copy.ts";
import type { HeldRegister } from "./held-register.ts";
import { IdleClock } from "./idle-clock.ts";
import { keptSession } from "./kept-session.ts";
import { type Preferences, readPreferences, writePreferences } from "./preferences.ts";
import { registerKeeper } from "./register-keeper.ts";

export interface RegisterHomeOptions {
  /** Folder of the user's data; made where it is missing. */
  readonly dataFolder: string;
  readonly workspace: WorkspaceState;
  readonly circumstances?: Circumstances;
  /** How long another program is waited for. */
  readonly waitMilliseconds?: number;
  /** Is told when nobody has given a sign for long enough, and locks in its own time; else it locks at once. */
  readonly whenIdle?: () => void;
  /** Is told when it was locked. */
  readonly whenLocked?: () => void;
}

/** The register that is open: the person's own, or a copy of the demo world; and the sessions of it that are shown. */
export class RegisterHome {
  readonly workspace: WorkspaceState;
  readonly #options: RegisterHomeOptions;
  readonly #idle: IdleClock;
  #register: Register | undefined;
  #kind: RegisterView["kind"] = "none";
  #problem = "";
  /** Why the day's backup could not be made. */
  #backupTrouble = "";
  /** Brings fields under another protection while the screens are used. */
  readonly #conversion = new ConversionRunner(() => this.#converted());
  /** Why the folder of the user's data cannot be used. */
  readonly #folderTrouble: string;
  #preferences: Preferences;
  /** Sessions that were shown when the register was locked. */
  #shownBefore: readonly string[] = [];
  /** Who is at the machine, as they said; "" where they gave no name, undefined where nobody was asked. */
  #by: string | undefined;
  /** Names of people who acted lately. */
  #lateActors: readonly string[] = [];
  /** The watch of a folder, which goes on while the register is locked. */
  watch: SessionWatch | undefined;

  constructor(options: RegisterHomeOptions) {
    this.#options = options;
    this.workspace = options.workspace;
    this.#folderTrouble = closedFolder(options.dataFolder);
    this.#preferences = readPreferences(options.dataFolder);
    this.#idle = new IdleClock(options.whenIdle ?? (() => this.lock()));
    this.workspace.keepWith(registerKeeper(this));
  }

  /**
   * What a start opens: the person's own register where there is one, else the demo world.
   * @param kind the demo, where that was open before although there is a register of the person's own
   */
  async begin(kind?: RegisterView["kind"]): Promise<void> {
    this.#problem = this.#folderTrouble;
    if (this.#folderTrouble !== "") return this.#demoInMemory();
    if (this.#hasOwn && !(kind === "demo" && existsSync(this.#demoFile))) await this.openOwn();
    else if (existsSync(this.#demoFile)) await this.#open("demo", this.#demoFile, false);
    else await this.openDemo().catch(startEmpty);
  }

  /** Opens the person's own register; a new one where there is none. The demo's copy is thrown away. */
  async openOwn(): Promise<void> {
    if (this.#kind === "own" && this.#register !== undefined) return;
    const wasDemo = this.#kind === "demo";
    await this.#open("own", this.#ownFile, true);
    if (wasDemo) removeCopy(this.#demoFile);
    if (this.#register === undefined || this.#register.readOnlyBecause !== undefined) return;
    await this.#keepDailyBackup(this.#register);
  }

  async #keepDailyBackup(register: Register): Promise<void> {
    await keepDailyBackup(register).catch((error: unknown) => {
      this.#backupTrouble = `Today's backup could not be made: ${sentenceOfTrouble(error)}`;
    });
  }

  /** Sets, changes or removes what protects the register, step by step. */
  async protect(steps: (register: Register) => Generator<unknown>): Promise<void> {
    await this.#conversion.run(steps(this.register));
  }

  #converted(): void {
    const register = this.#register;
    if (register === undefined || register.locked) return;
    this.beganAnew();
    this.attend();
    if (this.#kind === "own" && register.readOnlyBecause === undefined) void this.#keepDailyBackup(register);
  }

  /** Opens the demo world as a new copy. */
  async openDemo(): Promise<void> {
    const world = this.workspace.demoWorld();
    this.#close();
    this.workspace.clear();
    await copyDemo(this.#options.dataFolder, world, this.#demoFile);
    await this.#open("demo", this.#demoFile, false);
  }

  /** The register that is open and its sessions that are shown, or will be after unlocking. */
  get held(): HeldRegister {
    const { encrypted = false, locked = false } = this.#register ?? {};
    const shown = this.workspace.sessions.flatMap(({ keptAs }) => keptAs ?? []);
    return { kind: this.#kind, sessions: locked ? this.#shownBefore : shown, unlocked: encrypted && !locked };
  }

  /** Shows sessions that were shown before: at once, or after unlocking. One that is gone is passed over. */
  showAgain(sessions: readonly string[]): void {
    if (this.#register === undefined) return;
    if (this.#register.locked) this.#shownBefore = sessions;
    else for (const id of sessions) if (this.#register.reads.describedSession(id) !== undefined) this.show(id);
  }

  /** @throws RequestRefused while none is open */
  get register(): Register {
    if (this.#register === undefined) throw new RequestRefused(this.#problem || "No register is open.");
    return this.#register;
  }

  get isDemo(): boolean {
    return this.#kind === "demo";
  }

  /** Does something in the register and lists each action it became among what can be taken back. */
  act<Result>(words: string, reach: StepReach, work: (register: Register) => Result): Result {
    const { register } = this;
    const { steps } = register.writes;
    const result = work(register);
    for (const sequence of register.writes.stepsSince(steps)) this.workspace.recordKept({ words, reach, sequence });
    return result;
  }

  /** Keeps all that the work writes to the register, or nothing of it where it throws. */
  whole<Result>(work: () => Result): Result {
    const register = this.#register;
    const canWrite = register !== undefined && !register.locked && register.readOnlyBecause === undefined;
    return canWrite ? register.writes.whole(work) : work();
  }

  /** After something that made the register begin anew: its steps are gone, and what is shown is read again. */
  beganAnew(): void {
    this.workspace.forgetKept();
    this.workspace.refreshKept();
  }

  /** Shows a session of the register. @throws RequestRefused where there is none */
  show(id: string): void {
    const open = this.workspace.sessions.find((each) => each.keptAs === id);
    const taken = new Set(this.workspace.sessions.map(({ folder }) => folder));
    if (open === undefined) this.workspace.openKept(keptSession(this.register, id, taken));
    else this.workspace.show(open.folder);
  }

  /** The folder of the session shown, where it is one of the register and of today: what is recorded now belongs to it. */
  sessionUnderWay(): string | undefined {
    if (this.#register === undefined || this.#register.locked) return undefined;
    const { folder, keptAs, session } = this.workspace.read();
    const today = localDate(this.#register.circumstances.now());
    return keptAs !== undefined && session?.description.date === today ? folder : undefined;
  }

  /** Nothing happens where no passphrase protects it. */
  lock(): void {
    if (this.#register === undefined || !this.#register.encrypted || this.#register.locked) return;
    this.watch?.beforeLocking();
    this.#shownBefore = this.workspace.sessions.flatMap(({ keptAs }) => keptAs ?? []);
    this.#register.lock();
    this.#actBy(undefined);
    this.workspace.closeKept();
    this.#idle.stop();
    this.#options.whenLocked?.();
  }

  unlock(passphrase: Uint8Array): void {
    const { register } = this;
    register.unlock(passphrase);
    this.showAgain(this.#shownBefore);
    this.#shownBefore = [];
    this.attend();
    this.#conversion.goOn(register);
    this.#actBy(undefined);
    void this.watch?.unlocked();
  }

  /**
   * Who is at the machine from now on: the name stands in the journal beside the system's user, and nowhere else.
   * @param name "" for no name
   */
  actBy(name: string): void {
    if (this.register.locked) throw new RequestRefused("The register is locked: give its passphrase first.");
    this.#actBy(name);
  }

  #actBy(name: string | undefined): void {
    this.#by = name;
    const register = this.#register;
    const canRead = this.#kind === "own" && register !== undefined && !register.locked;
    this.#lateActors = canRead ? register.reads.lateActors() : [];
  }

  /** A person is there, or a recording came in: somebody jumped. */
  attend(): void {
    const canLock = this.#register?.encrypted === true && !this.#register.locked;
    if (canLock) this.#idle.restart(this.#preferences.lockAfterMinutes);
    else this.#idle.stop();
  }

  get isLocked(): boolean {
    return this.#register?.locked ?? false;
  }

  get preferences(): Preferences {
    return this.#preferences;
  }

  prefer(preferences: Preferences): void {
    this.#preferences = preferences;
    writePreferences(this.#options.dataFolder, preferences);
  }

  /** The folder of the user's data. */
  get dataFolder(): string {
    return this.#options.dataFolder;
  }

  view(): RegisterView {
    const register = this.#register;
    return {
      kind: register === undefined ? "none" : this.#kind,
      file: this.#kind === "demo" ? this.#demoFile : this.#ownFile,
      encrypted: register?.encrypted ?? false,
      locked: register?.locked ?? false,
      hasOwn: this.#hasOwn,
      lockAfterMinutes: this.#preferences.lockAfterMinutes,
      countsWhileLocked: this.#preferences.countsWhileLocked,
      lateActors: this.#lateActors,
      ...(this.#by !== undefined && { by: this.#by }),
      ...(this.#problem !== "" && { problem: this.#problem }),
      ...(register?.readOnlyBecause !== undefined && { readOnlyBecause: register.readOnlyBecause }),
      ...(register?.damage !== undefined && { damage: register.damage }),
      ...(register?.unfinishedErasure !== undefined && { unfinishedErasure: register.unfinishedErasure }),
      ...(this.#backupTrouble !== "" && { backupTrouble: this.#backupTrouble }),
      ...(register?.conversion !== undefined && { conversion: register.conversion }),
      ...(this.#kind === "own" && register?.headCode !== undefined && { journalCode: register.headCode }),
      protectionTroubles: [
        ...(this.#conversion.trouble === "" ? [] : [this.#conversion.trouble]),
        ...(register?.backupTroubles ?? []).map(troubleWords),
      ],
    };
  }

  close(): void {
    this.#close();
  }

  async #open(kind: "own" | "demo", file: string, create: boolean): Promise<void> {
    const { circumstances = machineCircumstances(), waitMilliseconds } = this.#options;
    const by = () => this.#by || undefined;
    this.#close();
    this.#kind = kind;
    try {
      this.#register = await openRegister(file, {
        create,
        convertLater: true,
        circumstances: {
          ...circumstances,
          get by() {
            return by();
          },
        },
        ...(waitMilliseconds !== undefined && { waitMilliseconds }),
      });
    } catch (error) {
      this.#problem = sentenceOfTrouble(error);
      return;
    }
    if (kind === "demo") this.#showDemo(this.#register);
    this.#actBy(undefined);
    this.#conversion.goOn(this.#register);
  }

  /** The program is of use without a register too. */
  #demoInMemory(): void {
    try {
      this.workspace.openDemo();
    } catch (error) {
      startEmpty(error);
    }
  }

  #showDemo(register: Register): void {
    const taken = new Set<string>();
    const sessions = register.reads.records("sessions").map(({ id }) => {
      const session = keptSession(register, id, taken);
      taken.add(session.folder);
      return session;
    });
    this.workspace.showDemo(sessions);
  }

  #close(): void {
    this.#idle.stop();
    this.workspace.closeKept();
    this.#register?.close();
    this.#register = undefined;
    this.#problem = "";
    this.#backupTrouble = "";
    this.#shownBefore = [];
  }

  get #hasOwn(): boolean {
    return existsSync(this.#ownFile);
  }

  get #ownFile(): string {
    return join(this.#options.dataFolder, "register.sqlite");
  }

  get #demoFile(): string {
    return join(this.#options.dataFolder, "demo-register.sqlite");
  }
}

/** The date on the calendar of this computer. */
function localDate(time: Date): string {
  const part = (value: number) => String(value).padStart(2, "0");
  return `${time.getFullYear()}-${part(time.getMonth() + 1)}-${part(time.getDate())}`;
}

/** Makes the folder where it is missing and closes it to everybody but its owner. @returns why that cannot be done */
function closedFolder(folder: string): string {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    chmodSync(folder, 0o700);
    return "";
  } catch (error) {
    return `The folder of your data, ${folder}, cannot be used: ${sentenceOfTrouble(error)}`;
  }
}

/** What the operating system or the register says of a trouble. @throws what is neither: it is our own mistake */
function sentenceOfTrouble(error: unknown): string {
  if (error instanceof RequestRefused) return error.message;
  if (error instanceof Error && "code" in error) return `${error.message.replace(/\.$/, "")}.`;
  throw error;
}

/** An installation without the demo's recordings starts with nothing; asking for the demo then says that they are missing. */
function startEmpty(error: unknown): void {
  if (!(error instanceof RequestRefused)) throw error;
}
