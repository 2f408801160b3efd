/** Something typed that cannot be done; one clear sentence that names it. Exit code 2. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}
