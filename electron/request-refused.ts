/** A request that cannot be done as asked; the message is a plain sentence for the person at the screen. */
export class RequestRefused extends Error {
  override readonly name = "RequestRefused";
}
