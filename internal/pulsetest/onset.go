package pulsetest

// Onsets returns the samples at which sound begins after at least quiet
// samples below threshold.
func Onsets(samples []float32, threshold float32, quiet int) []int {
	var onsets []int
	silent := quiet
	for i, v := range samples {
		if v > threshold || v < -threshold {
			if silent >= quiet {
				onsets = append(onsets, i)
			}
			silent = 0
			continue
		}
		silent++
	}
	return onsets
}

// Locate returns the sample, at most within from near, at which clip begins in
// samples: where the two go together best.
func Locate(samples, clip []float32, near, within int) int {
	best, at := float32(0), near
	for i := max(0, near-within); i <= near+within && i+len(clip) <= len(samples); i++ {
		var sum float32
		for k, v := range clip {
			sum += v * samples[i+k]
		}
		if sum > best {
			best, at = sum, i
		}
	}
	return at
}

// Share returns how much of clip is to be heard in samples at at: 1 for the
// whole of it as it was made, less for one with a hole.
func Share(samples, clip []float32, at int) float64 {
	var both, power float64
	for k, v := range clip[:min(len(clip), len(samples)-at)] {
		both += float64(v) * float64(samples[at+k])
		power += float64(v) * float64(v)
	}
	return both / power
}
