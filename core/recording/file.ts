/** The imported bytes of one file, exactly as they came. */
export interface RecordingFile {
  /** Relative to its session's folder, forward slashes. */
  readonly path: string;
  readonly bytes: Uint8Array;
  /** SHA-256 of the bytes, 64 lower-case hexadecimal digits; the host computes it with the machine's own library. */
  readonly sha256: string;
}
