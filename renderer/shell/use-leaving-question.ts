import { useEffect } from "react";

/** Lets the browser ask before the page is left or loaded anew while decisions are not saved. */
export function useLeavingQuestion(unsaved: boolean): void {
  useEffect(() => {
    if (!unsaved) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [unsaved]);
}
