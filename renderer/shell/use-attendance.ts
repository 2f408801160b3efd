import { useEffect } from "react";
import { useWorkspace } from "./workspace.tsx";

/** Milliseconds between two signs of a person that are passed on, and between two looks at whether it was locked. */
const signEvery = 20_000;
const lookEvery = 5_000;

/**
 * Tells the host that somebody is there while keys are pressed or the pointer moves, so that a register with a
 * passphrase locks itself only when nobody is; and notices when it did.
 */
export function useAttendance(canLock: boolean): void {
  const { host, apply, report } = useWorkspace();
  useEffect(() => {
    if (!canLock) return;
    let wasThere = true;
    let passedOn = 0;
    const sign = () => {
      wasThere = true;
    };
    const timer = setInterval(() => {
      const present = wasThere && Date.now() - passedOn >= signEvery;
      if (present) {
        wasThere = false;
        passedOn = Date.now();
      }
      host.call("register.attend", { present }).then(({ locked }) => {
        if (locked) void apply("workspace.read", {});
      }, report);
    }, lookEvery);
    const events = ["pointermove", "pointerdown", "keydown", "wheel"] as const;
    for (const event of events) window.addEventListener(event, sign, { passive: true });
    return () => {
      clearInterval(timer);
      for (const event of events) window.removeEventListener(event, sign);
    };
  }, [canLock, host, apply, report]);
}
