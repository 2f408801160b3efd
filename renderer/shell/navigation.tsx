import { SegmentedControl, useMantineColorScheme } from "@mantine/core";
import { type Area, areaLabel, areas } from "./areas.ts";

interface NavigationProps {
  readonly area: Area;
  readonly onChoose: (area: Area) => void;
}

/** The areas on the left, the colour scheme and the promise at the foot. */
export function Navigation({ area, onChoose }: NavigationProps) {
  return (
    <header className="navigation">
      <p className="product">
        <svg className="product-mark" viewBox="0 0 14 16" aria-hidden="true">
          <rect x="1" y="1" width="4" height="14" rx="1.5" fill="var(--involved)" />
          <circle cx="10.5" cy="4.5" r="2" fill="var(--uninvolved)" />
          <circle cx="10.5" cy="11.5" r="2" fill="var(--uninvolved)" />
        </svg>
        Counterpoise
      </p>
      <nav aria-label="Areas">
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
        <SchemeSwitch />
        <p>Nothing leaves this computer</p>
      </div>
    </header>
  );
}

function SchemeSwitch() {
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  return (
    <SegmentedControl
      aria-label="Colours of the screen"
      size="xs"
      fullWidth
      orientation="vertical"
      value={colorScheme}
      onChange={(value) => setColorScheme(value === "light" || value === "dark" ? value : "auto")}
      data={[
        { value: "auto", label: "as the system" },
        { value: "light", label: "light" },
        { value: "dark", label: "dark" },
      ]}
    />
  );
}
