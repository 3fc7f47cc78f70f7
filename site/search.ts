// The third script: loaded when somebody begins to search. The single file carries it from the start.

import { search } from "./components/search/search.ts";

search();
