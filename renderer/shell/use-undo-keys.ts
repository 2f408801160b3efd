import { useEffect } from "react";
import { useWorkspace } from "./workspace.tsx";

/** Ctrl+Z (Command+Z) undoes and with Shift redoes, except while text is being written. */
export function useUndoKeys(): void {
  const { workspace, apply } = useWorkspace();
  const canUndo = workspace !== undefined && workspace.undo !== "";
  const canRedo = workspace !== undefined && workspace.redo !== "";
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || writesText(event.target)) return;
      const key = event.key.toLowerCase();
      const wanted = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : "";
      if (wanted === "") return;
      event.preventDefault();
      if (wanted === "undo" && canUndo) void apply("workspace.undo", {});
      if (wanted === "redo" && canRedo) void apply("workspace.redo", {});
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [apply, canUndo, canRedo]);
}

/** True for a place where the keys belong to the text being written. */
export function writesText(target: EventTarget | null): boolean {
  const written = "input:not([type=checkbox], [type=radio]), textarea, select";
  return target instanceof HTMLElement && target.closest(written) !== null;
}
