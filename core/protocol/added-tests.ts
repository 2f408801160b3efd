import { capitalised } from "../ground/plain-words.ts";
import type { Protocol, ProtocolTest } from "../stated/protocol-schema.ts";
import { protocolTestName } from "./progress-words.ts";

/** Tests that a named treating clinician may still add to a session's protocol. */
export function testsToAdd({ tests, mayAdd = [] }: Protocol): readonly ProtocolTest[] {
  return mayAdd.filter((entry) => !tests.some((each) => each.addedBy !== undefined && isSame(each, entry)));
}

/** The protocol with one of those tests added after its own, by a clinician who is named. */
export function withTestAdded(protocol: Protocol, entry: ProtocolTest, addedBy: string): Protocol {
  return { ...protocol, tests: [...protocol.tests, { ...entry, addedBy }] };
}

/** "Single-leg countermovement jump with the uninvolved leg was added to the protocol by …", one a test. */
export function addedTestLines({ tests }: Protocol): readonly string[] {
  return tests.flatMap((entry) =>
    entry.addedBy === undefined
      ? []
      : [`${capitalised(plannedTestName(entry))} was added to the protocol by ${entry.addedBy.replace(/\.$/, "")}.`],
  );
}

/** "single-leg countermovement jump with the uninvolved leg". */
export function plannedTestName(entry: ProtocolTest): string {
  return `${protocolTestName(entry)}${entry.only === undefined ? "" : ` with the ${entry.only} leg`}`;
}

function isSame(one: ProtocolTest, other: ProtocolTest): boolean {
  return one.test === other.test && one.legs === other.legs && one.dropHeightMetres === other.dropHeightMetres;
}
