/** A file that was complete while nothing could be taken in. */
export interface WaitingRecording {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Most bytes that wait in memory; what comes in beyond waits in its folder. */
const mostWaitingBytes = 256 * 1024 * 1024;

/** Recordings that came in while the register was locked, in their order; every version of a file that was complete. */
export class WaitingRecordings {
  readonly #waiting: WaitingRecording[] = [];
  #byteLength = 0;

  get count(): number {
    return this.#waiting.length;
  }

  has(path: string): boolean {
    return this.#waiting.some((each) => each.path === path);
  }

  hasRoomFor(byteLength: number): boolean {
    return this.#byteLength + byteLength <= mostWaitingBytes;
  }

  add(recording: WaitingRecording): void {
    this.#waiting.push(recording);
    this.#byteLength += recording.bytes.byteLength;
  }

  /** Hands the first over; undefined where none waits. */
  next(): WaitingRecording | undefined {
    const first = this.#waiting.shift();
    this.#byteLength -= first?.bytes.byteLength ?? 0;
    return first;
  }
}
