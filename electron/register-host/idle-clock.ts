/** Rings when nobody has given a sign for some minutes. */
export class IdleClock {
  readonly #ring: () => void;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(ring: () => void) {
    this.#ring = ring;
  }

  /** @param minutes 0: never */
  restart(minutes: number): void {
    this.stop();
    if (minutes === 0) return;
    this.#timer = setTimeout(this.#ring, minutes * 60_000);
    // waiting for a person keeps no program running
    this.#timer.unref();
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }
}
