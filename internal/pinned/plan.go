package pinned

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
)

// quantity is the text of a plan's value: one number and a unit, or feet, or whole
// inches, before what is less than one of them.
var quantity = regexp.MustCompile(`: "(-?)(\d+(?:\.\d+)?)((?:-\d+/\d+)? [a-zA-Z%][^"]*)"`)

// Near returns a plan's text with about one in share of its quantities a little changed.
func Near(text string, share int, r *rand.Rand) string {
	return quantity.ReplaceAllStringFunc(text, func(s string) string {
		if r.IntN(share) > 0 {
			return s
		}
		m := quantity.FindStringSubmatch(s)
		x, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			return s
		}
		x *= []float64{0.8, 0.9, 0.95, 1.05, 1.1, 1.3}[r.IntN(6)]
		if strings.ContainsAny(m[3], "0123456789") {
			x = float64(int(x))
		}
		return fmt.Sprintf(`: "%s%.4g%s"`, m[1], x, m[3])
	})
}

// Tenths draws a number of tenths of a millimetre or a gram, the same on every machine: a
// product and a sum would fuse on some.
func Tenths(r *rand.Rand, from, to float64) float64 {
	lo := int(from * 1e4)
	return float64(lo+r.IntN(int(to*1e4)-lo)) / 1e4
}
