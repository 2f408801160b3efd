import { words } from "../words/words.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.frame;

/** One sentence on what the host refused; it stays until it is dismissed. */
export function ErrorToast() {
  const { problem, dismiss } = useWorkspace();
  return (
    <section className="toast-place" aria-label={prose.messages} aria-live="assertive">
      {problem !== "" && (
        <div className="toast caution">
          <p>{problem}</p>
          <button type="button" className="text-button" onClick={dismiss}>
            {prose.dismiss}
          </button>
        </div>
      )}
    </section>
  );
}
