import Plotly from "plotly.js/lib/core";
import scatter from "plotly.js/lib/scatter";

// Only what is drawn: lines. The whole library would be four times as large.
Plotly.register([scatter]);

export { Plotly };
