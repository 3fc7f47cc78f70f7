package hold

// Analyse judges a hold.
func Analyse(log Log, c Conditions) (Result, error) {
	return Result{Verdict: Undetermined}, nil
}
