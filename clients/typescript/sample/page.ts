// The sample page: a product of an invented shop, with the figures of a Scalewright service.

import { Client } from "../src/index.js";
import { compareForm } from "./compare.js";
import { layoutForm } from "./layout.js";
import { specSheet } from "./spec_sheet.js";

const client = new Client(document.documentElement.dataset["service"], { language: "en" });

layoutForm(client);
compareForm(client);
void specSheet(client);
