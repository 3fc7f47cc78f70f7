// The script of the page that shows what is stored on this phone. Nothing on another page needs it.

import { stored } from "./components/stored/stored.ts";

stored();
