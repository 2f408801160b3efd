import { SegmentedControl, useMantineColorScheme } from "@mantine/core";
import type { RegisterView } from "../../electron/boundary/register-view.ts";
import { words } from "../words/words.ts";
import { type Area, areaLabel, areas } from "./areas.ts";
import { useWorkspace } from "./workspace.tsx";

const prose = words.screens.frame;

interface NavigationProps {
  readonly area: Area;
  readonly register: RegisterView | undefined;
  readonly onChoose: (area: Area) => void;
}

/** The areas on the left, the colour scheme and the promise at the foot. */
export function Navigation({ area, register, onChoose }: NavigationProps) {
  return (
    <section className="navigation" aria-label={prose.program}>
      <p className="product">
        <svg className="product-mark" viewBox="0 0 14 16" aria-hidden="true">
          <rect x="1" y="1" width="4" height="14" rx="1.5" fill="var(--involved)" />
          <circle cx="10.5" cy="4.5" r="2" fill="var(--uninvolved)" />
          <circle cx="10.5" cy="11.5" r="2" fill="var(--uninvolved)" />
        </svg>
        {prose.program}
      </p>
      <nav aria-label={prose.areasRegion}>
        <ul>
          {areas.map((each) => (
            <li key={each}>
              <button
                type="button"
                className="navigation-item"
                aria-current={each === area ? "page" : undefined}
                onClick={() => onChoose(each)}
              >
                {areaLabel(each)}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <div className="navigation-foot">
        {register !== undefined && <RegisterWords register={register} />}
        <SchemeSwitch />
        <p>{prose.nothingLeaves}</p>
      </div>
    </section>
  );
}

/** Which register is open, on every screen; and locking it. */
function RegisterWords({ register: { kind, encrypted, readOnlyBecause } }: { readonly register: RegisterView }) {
  const { apply } = useWorkspace();
  const words = { own: prose.registerOwn, demo: prose.registerDemo, none: prose.registerNone }[kind];
  return (
    <div>
      <p>{readOnlyBecause === undefined ? words : prose.readOnly(words)}</p>
      {encrypted && (
        <button type="button" className="text-button" onClick={() => void apply("register.lock", {})}>
          {prose.lockNow}
        </button>
      )}
    </div>
  );
}

function SchemeSwitch() {
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  return (
    <SegmentedControl
      aria-label={prose.colours}
      size="xs"
      fullWidth
      orientation="vertical"
      value={colorScheme}
      onChange={(value) => setColorScheme(value === "light" || value === "dark" ? value : "auto")}
      data={[
        { value: "auto", label: prose.coloursAsTheSystem },
        { value: "light", label: prose.coloursLight },
        { value: "dark", label: prose.coloursDark },
      ]}
    />
  );
}
