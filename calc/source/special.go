package source

// special holds the three keys that every page may cite. They are not sources: they say what stands behind a value.
var special = []Source{
	{
		Key:     "common-practice",
		Kind:    CommonPractice,
		Title:   "Common practice of the trade",
		Author:  "the trade",
		Edition: "no published source",
		Locator: "the range is given where practice varies",
		Address: "no address: no published source",
		Read:    Practice,
	},
	{
		Key:     "from-memory",
		Kind:    CommonPractice,
		Title:   "From memory, verify before use",
		Author:  "nobody",
		Edition: "not confirmed in any source",
		Locator: "never a hard limit",
		Address: "no address: not confirmed",
		Read:    Memory,
	},
	{
		Key:     "makers-manual",
		Kind:    Manual,
		Title:   "The maker's manual of the unit on site governs",
		Author:  "the maker of the unit",
		Edition: "the edition for the serial number on site",
		Locator: "the clause for this unit",
		Address: "no address: on site",
		Read:    Practice,
	},
}
