// The fifth script: the page of the cause assessment. Only that page loads it; the single file carries it.

import { assessAll } from "./components/assess/assess.ts";

assessAll();
