import { useWorkspace } from "./workspace.tsx";

/** One sentence on what the host refused; it stays until it is dismissed. */
export function ErrorToast() {
  const { problem, dismiss } = useWorkspace();
  return (
    <section className="toast-place" aria-label="Messages" aria-live="assertive">
      {problem !== "" && (
        <div className="toast caution">
          <p>{problem}</p>
          <button type="button" className="text-button" onClick={dismiss}>
            Dismiss
          </button>
        </div>
      )}
    </section>
  );
}
