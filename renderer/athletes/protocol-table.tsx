import { protocolTestName } from "../../core/protocol/progress-words.ts";
import type { Protocol } from "../../core/protocol/protocol.ts";
import { sentenceCase } from "../shell/words.ts";

/** What a protocol asks for: tests with their trials, what is not done yet, and when to stop. */
export function ProtocolTable({ protocol }: { readonly protocol: Protocol }) {
  return (
    <div className="protocol">
      <table className="plain-table">
        <caption className="visually-hidden">Tests of the protocol</caption>
        <thead>
          <tr>
            <th scope="col">In this order</th>
            <th scope="col" className="number">
              Valid trials wanted
            </th>
            <th scope="col" className="number">
              Most attempts
            </th>
          </tr>
        </thead>
        <tbody>
          {protocol.tests.map((entry) => (
            <tr key={`${entry.test} ${entry.legs} ${entry.dropHeightMetres ?? ""}`}>
              <td>{sentenceCase(protocolTestName(entry))}</td>
              <td className="number">
                {entry.trials}
                {entry.legs === "single" && <span className="unit"> each leg</span>}
              </td>
              <td className="number">
                {entry.mostAttempts}
                {entry.legs === "single" && <span className="unit"> each leg</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {protocol.notYet.length > 0 && (
        <>
          <h3 className="small-title">Not done yet</h3>
          <ul>
            {protocol.notYet.map((entry) => (
              <li key={`${entry.test} ${entry.legs}`}>
                {sentenceCase(protocolTestName(entry))} <span className="muted">({entry.reason})</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <h3 className="small-title">Stop rules</h3>
      <ul>
        {protocol.stopRules.map((rule) => (
          <li key={rule}>{rule}</li>
        ))}
      </ul>
    </div>
  );
}
