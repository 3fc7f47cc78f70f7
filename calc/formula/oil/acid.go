package oil

// Acid numbers of oil, mg KOH/g.
const (
	MineralLimit = 0.05 // above it a severe burnout, mineral oil: practice-40
	EsterWatch   = 0.10 // from it sample again: manual-51
	EsterLimit   = 0.19 // above it change oil and driers: manual-51
)

// Level is how bad one finding is. Unknown is below them all.
type Level int

// The levels of a finding. For a test: negative, faint, positive. For the
// oil's look: clear, dark, black. For stub and drier: clean, stain, soot.
const (
	Unknown Level = iota - 1
	Fine
	Middling
	Bad
)

// Class is the clean-up that the findings ask for.
type Class int

// The classes, from no decision to the full clean-up.
const (
	Undecided Class = iota
	None
	Suspect
	Mild
	Residual
	Severe
)

// Number judges an acid number against the two limits of an oil: negative
// below the watch line, positive above the limit.
func Number(acid, watch, limit float64) Level {
	switch {
	case acid > limit:
		return Bad
	case acid >= watch:
		return Middling
	}
	return Fine
}

// Classify returns the mildest class that covers all that was found: black
// oil or soot is severe whatever a test says, and a positive test is severe
// until oil and stub have both been seen clean. No class below suspect is
// given while something is unknown. Source: the decision table of the trade
// notes, common-practice; the signs of severity are those of practice-40.
func Classify(test, look, stub Level) Class {
	switch {
	case look == Bad || stub == Bad:
		return Severe
	case test == Bad && look == Fine && stub == Fine:
		return Residual
	case test == Bad:
		return Severe
	case test == Middling || stub == Middling:
		return Mild
	case look == Middling:
		return Suspect
	case test == Fine && look == Fine && stub == Fine:
		return None
	}
	return Undecided
}
