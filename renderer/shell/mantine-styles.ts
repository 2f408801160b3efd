// Only the parts that are used, in the order the library asks for.
import "@mantine/core/styles/baseline.css";
import "@mantine/core/styles/default-css-variables.css";
import "@mantine/core/styles/global.css";
import "@mantine/core/styles/UnstyledButton.css";
import "@mantine/core/styles/Button.css";
import "@mantine/core/styles/CloseButton.css";
import "@mantine/core/styles/Loader.css";
import "@mantine/core/styles/Input.css";
import "@mantine/core/styles/Combobox.css";
import "@mantine/core/styles/InlineInput.css";
import "@mantine/core/styles/Checkbox.css";
import "@mantine/core/styles/Radio.css";
import "@mantine/core/styles/FloatingIndicator.css";
import "@mantine/core/styles/SegmentedControl.css";
import "@mantine/core/styles/Progress.css";
