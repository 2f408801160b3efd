/** A passphrase that is accepted for something new, for every test that needs one. */
export const strongPassphrase = "ridge lantern plum orbit seventeen";
