/** Rings when nobody has given a sign for some minutes. */
export class IdleClock {
  /** While true it does not ring, and looks again a minute later. */
  isBusy: () => boolean = () => false;
  readonly #ring: () => void;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(ring: () => void) {
    this.#ring = ring;
  }

  /** @param minutes 0: never */
  restart(minutes: number): void {
    this.stop();
    if (minutes > 0) this.#wait(minutes);
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  #wait(minutes: number): void {
    this.#timer = setTimeout(() => {
      if (this.isBusy()) this.#wait(1);
      else this.#ring();
    }, minutes * 60_000);
    // waiting for a person keeps no program running
    this.#timer.unref();
  }
}
