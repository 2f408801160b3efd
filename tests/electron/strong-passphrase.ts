/** A passphrase that is let through for something new, for every test that sets one where a person would. */
export const strongPassphrase = "ridge lantern plum orbit seventeen";

/** Another one, to change to. */
export const otherStrongPassphrase = "copper meadow tidal anvil forty";
