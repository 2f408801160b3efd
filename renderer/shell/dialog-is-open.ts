/** True while a question stands before everything else; keys then belong to it. */
export function dialogIsOpen(): boolean {
  return document.querySelector('[aria-modal="true"]') !== null;
}
