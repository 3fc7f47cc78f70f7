package hold

// Numbers that no published source gives. They are common practice or judgement, chosen to err toward
// "undetermined". Each says what it protects against. micron is exact: 1 mm of mercury / 1000 = 101,325/760,000 Pa.
const (
	micron = 101325.0 / 760000.0

	// confidence is two-sided; z is the normal quantile that belongs to it.
	confidence = 0.99
	z99        = 2.5758
	// Tight is called on more: three standard deviations, because a leak called tight is the error that hurts.
	zTight = 3.0
	// A leak is called on less: two standard deviations. Looking for a leak that is not there costs time; it hurts nobody.
	zSeen = 2.0

	// Equalisation between near and far pipes ends within minutes: volume over conductance of a long small pipe.
	equalisationShortest = 10.0
	equalisationTypical  = 180.0
	equalisationLongest  = 600.0
	// A falling part has two causes: the gauge sat on the side with the higher pressure, or what comes in at the far end
	// reaches the gauge late. Its size is believed to be within (one standard deviation) equalisationShare of the first pressure, plus twice the dip
	// that the log shows, plus half of what comes in during its time constant.
	equalisationShare = 0.03

	// A release from oil slower than releaseLongest is not told from a leak by any hold of practical length.
	releaseLongest = 12 * 3600.0
	// Slow release (time constants above slowRelease) comes out of the bulk of the oil. It would level at no more
	// than slowActivity times the saturation pressure of water: wetter oil than that is not seen after pumping
	// below a thousand micron. Faster release may come from free water and reach saturation.
	slowRelease  = 3600.0
	slowActivity = 0.25
	// saturationFallback is the temperature taken for that ceiling when none is known, K.
	saturationFallback = 293.15

	// Gauge: one standard deviation of a reading relative to (reading + 100 micron), before the log has shown its own
	// scatter; the weight of that belief in readings; the least scatter believed.
	noisePrior  = 0.004
	noiseBelief = 4.0
	noiseLeast  = 0.0005
	fewRows     = 2.0 // see fit: widens the bound for "tight" with few rows
	noiseRows   = 25  // see scatter

	// No real system follows exponentials exactly. modelShare is one standard deviation of that misfit relative to (reading + 100 micron); it
	// does not average out over more than modelPoints points.
	modelShare   = 0.0008
	modelPoints  = 40.0
	noiseOffset  = 100 * micron
	stepFallback = 50 * micron // largest step believed when the log shows fewer than three different values

	// Slow wander of the gauge over the hold, one standard deviation: share of the reading, growing with the root of the hours up to
	// driftHours, plus an offset.
	driftShare  = 0.003
	driftHours  = 4.0
	driftOffset = 0.5 * micron

	// Gas temperature that nobody measured: two standard deviations of its change over the hold, K per hour and
	// at most K; for each way the temperature is known. To that comes a share of the change that was measured: pipes lag air by up to an hour.
	unknownRate, unknownMost  = 0.5, 4.0
	endsRate, endsMost        = 0.3, 1.0
	loggedRate, loggedMost    = 0.2, 0.5
	pipeShare, pipeShareShort = 0.3, 0.5 // share over long holds; more over short ones, fading with pipeHours
	pipeHours                 = 2.0
	// Way of the temperature between two known ends, or all along when unknown: one standard deviation of a bow, K per hour and at most.
	bowRate, bowMost = 0.08, 0.6

	// Water vapour over oil, ice or a drier follows the temperature like saturation: about 6.5 % per kelvin near room
	// temperature. waterShare is the part of the gas taken as water for unmeasured changes; waterMean and waterSpread
	// describe the part that follows measured changes.
	waterPerKelvin         = 0.065
	waterShare             = 0.7
	waterMean, waterSpread = 0.35, 0.35
	temperatureMatters     = 0.3 // K: smaller measured changes are left to the allowance

	// maxPoints is the size of the thinned log.
	maxPoints = 120
)
