/** Version of the engine, printed with every result. The same as package.json's; a test says so. */
export const engineVersion = "0.1.0";
