package same

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"flag"
	"hash"
	"math"
	"math/rand/v2"
	"runtime"
	"testing"
)

var list = flag.Bool("list", false, "print the hashes as the table of this test")

// A tape takes results in; every bit of every number counts, and so does whether
// there was an error.
type tape struct {
	sum hash.Hash
	n   int
}

func (t *tape) put(err error, x ...float64) {
	if err != nil {
		x = []float64{math.Inf(-1)}
	}
	for _, v := range x {
		var b [8]byte
		binary.LittleEndian.PutUint64(b[:], math.Float64bits(v))
		t.sum.Write(b[:])
		t.n++
	}
}

// A source makes inputs that are the same on every machine: no product is fused.
type source struct{ *rand.Rand }

// between is even between two numbers.
func (s source) between(a, b float64) float64 { return a + float64((b-a)*s.Float64()) }

// about is a number from a to 2ⁿ a, in even octaves.
func (s source) about(a float64, n int) float64 { return math.Ldexp(a*(1+s.Float64()), s.IntN(n)) }

// A group is a set of results of one kind.
type group struct {
	name string
	runs int
	of   func(s source, t *tape)
}

// everywhere holds the groups that are bit for bit the same on amd64, arm64 and wasm,
// with the first 16 digits of their SHA-256. Each hash is our own result, pinned: a
// change says that results changed somewhere in their last places at least.
var everywhere = map[string]string{
	"float: cylinder by its draft":  "a44e8ee9b7edaff5",
	"float: period":                 "9c0dd9e091e238b0",
	"lumber: stability factors":     "59102974a50a4d81",
	"lumber: sections and moisture": "3bc5c2222488914b",
	"fasten: yield modes":           "7637fc1f2c2e58a6",
	"layout: wedges":                "493f45b8546397df",
	"ice: plate's stiffness":        "30b14d1c0e9533de",
	"action: drifting ice":          "502c7306f23d7996",
	"season: growth and slush":      "9b1e7bdff2282c4d",
}

// TestSameBits hashes the results of every group. Those of the table must have their
// hash on every machine; the others differ for the reasons in apart.
func TestSameBits(t *testing.T) {
	for _, g := range groups {
		t.Run(g.name, func(t *testing.T) {
			s := source{rand.New(rand.NewPCG(2026, uint64(len(g.name))))}
			out := tape{sum: sha256.New()}
			for range g.runs {
				g.of(s, &out)
			}
			got := hex.EncodeToString(out.sum.Sum(nil))[:16]
			if *list {
				t.Logf("%s/%s\t%q: %q, // %d numbers", runtime.GOOS, runtime.GOARCH, g.name, got, out.n)
				return
			}
			t.Logf("%s of %d numbers", got, out.n)
			if out.n < 100 {
				t.Errorf("only %d numbers", out.n)
			}
			want, ok := everywhere[g.name]
			why := apart[g.name]
			switch {
			case ok == (why != ""):
				t.Error("a group is either the same everywhere or apart, with a reason")
			case ok && got != want:
				t.Errorf("hash %s on %s/%s, want %s", got, runtime.GOOS, runtime.GOARCH, want)
			}
		})
	}
	for _, table := range []map[string]string{everywhere, apart} {
		for name := range table {
			known := false
			for _, g := range groups {
				known = known || g.name == name
			}
			if !known {
				t.Errorf("no group is called %q", name)
			}
		}
	}
}

// Why groups differ.
const (
	fused = "arm64 fuses products into sums, here or in package math; amd64 and wasm agree"
	exp   = "math.Exp is assembly on amd64, and arm64 fuses besides: all three differ"
)

// apart holds the groups whose last places differ between machines, and why.
var apart = map[string]string{
	"float: cylinder by its volume":         fused,
	"float: wet cylinder, level and tilted": fused,
	"float: wet block":                      fused,
	"float: rest of a dock":                 fused,
	"float: righting of a dock":             fused,
	"float: water and air":                  exp,
	"moor: a line by its pull":              fused,
	"moor: a line by its reach":             fused,
	"moor: wave length and push":            exp,
	"moor: waves by the wind":               exp,
	"moor: wind":                            exp,
	"moor: ramp":                            fused,
	"lumber: torsion of a section":          exp,
	"fasten: group action":                  exp,
	"frame: beam":                           fused,
	"frame: grillage":                       fused,
	"frame: torsion":                        fused,
	"rack: frame":                           fused,
	"layout: diagonals":                     fused,
	"layout: corners":                       fused,
	"ice: plate under circles":              exp,
	"ice: creep and waves":                  exp,
	"kelvin":                                exp,
	"action: lifting ice":                   fused,
	"season: sun":                           fused,
	"season: a winter day by day":           exp,
}
