package pulsetest

import "slices"

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

// Sounding is a clip and the sample at which it begins.
type Sounding struct {
	At   int
	Clip []float32
}

// Shares returns how much of each clip is to be heard in samples: 1 for the whole
// of it as it was made, less for one with a hole. What sounds together with it is
// taken out first.
func Shares(samples []float32, list []Sounding) []float64 {
	rest := slices.Clone(samples)
	for _, s := range list {
		for k, v := range s.heard(rest) {
			rest[s.At+k] -= v
		}
	}
	shares := make([]float64, len(list))
	for i, s := range list {
		var missing, power float64
		for k, v := range s.heard(rest) {
			missing += float64(rest[s.At+k]) * float64(rest[s.At+k])
			power += float64(v) * float64(v)
		}
		shares[i] = 1 - missing/power
	}
	return shares
}

// heard returns what of the clip lies within samples.
func (s Sounding) heard(samples []float32) []float32 {
	return s.Clip[:min(len(s.Clip), len(samples)-s.At)]
}
