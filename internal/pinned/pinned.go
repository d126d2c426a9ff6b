// Package pinned holds the library to the numbers that it gave before. They are its
// own, so that they check nothing against the outside: they show what a change moves
// that nobody meant to move.
package pinned

import (
	"flag"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update-pins", false, "write the pinned numbers anew")

// Check makes so many results from seeded random numbers and compares each with what
// testdata/pinned/<name>.txt has of it: the hash of all its exported numbers, to six
// digits, and words. Errors count as such, whatever they say.
func Check(t *testing.T, name string, cases int, made func(r *rand.Rand) []any) {
	t.Helper()
	var got []string
	var texts []string
	for i := range cases {
		var b strings.Builder
		for _, x := range made(rand.New(rand.NewPCG(uint64(i), 1))) {
			Write(&b, reflect.ValueOf(x))
			b.WriteByte('\n')
		}
		got, texts = append(got, Hash(b.String())), append(texts, b.String())
	}
	want := Kept(t, name, got)
	failed := 0
	for i := range got {
		if got[i] != want[i] {
			if failed++; failed == 1 {
				t.Errorf("case %d is not what it was; now it is\n%.2000s", i, texts[i])
			}
		}
	}
	if failed > 0 {
		t.Errorf("%d of %d cases moved: if that is meant, run with -update-pins and say so under \"Numbers that changed\"", failed, cases)
	}
}

// OneMachine skips a test on all machines but amd64: of a search, and of what cancels to
// nearly nothing, six digits are not the same where products fuse into sums.
func OneMachine(t *testing.T) {
	t.Helper()
	if runtime.GOARCH != "amd64" {
		t.Skip("pinned on amd64")
	}
}

// Kept returns the lines of testdata/pinned/<name>.txt, of which there must be as many
// as are got; with -update-pins they are the ones that are got.
func Kept(t *testing.T, name string, got []string) []string {
	t.Helper()
	file := filepath.Join("testdata", "pinned", name+".txt")
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(strings.Join(got, "\n")+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Split(strings.TrimSpace(string(data)), "\n")
	if len(want) != len(got) {
		t.Fatalf("%s has %d lines, not %d: run with -update-pins", file, len(want), len(got))
	}
	return want
}

// Hash is short, and long enough to tell results apart.
func Hash(text string) string {
	h := fnv.New32a()
	h.Write([]byte(text))
	return fmt.Sprintf("%08x", h.Sum32())
}

// Write prints the exported numbers and words of a value.
func Write(b *strings.Builder, v reflect.Value) { write(b, v, 0) }

var errorType = reflect.TypeFor[error]()

func write(b *strings.Builder, v reflect.Value, depth int) {
	switch {
	case !v.IsValid() || depth > 8 || v.Type().String() == "*measure.Source":
		return
	case v.Type().Implements(errorType) && (v.Kind() != reflect.Pointer && v.Kind() != reflect.Interface || !v.IsNil()):
		b.WriteString("refused ")
		return
	}
	switch v.Kind() {
	case reflect.Float32, reflect.Float64:
		b.WriteString(number(v.Float()))
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		fmt.Fprintf(b, "%d ", v.Int())
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		fmt.Fprintf(b, "%d ", v.Uint())
	case reflect.Bool:
		fmt.Fprintf(b, "%t ", v.Bool())
	case reflect.String:
		b.WriteString(v.String() + " ")
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			write(b, v.Elem(), depth+1)
		}
	case reflect.Struct:
		b.WriteString("{")
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				write(b, v.Field(i), depth+1)
			}
		}
		b.WriteString("} ")
	case reflect.Slice, reflect.Array:
		b.WriteString("[")
		for i := range v.Len() {
			write(b, v.Index(i), depth+1)
		}
		b.WriteString("] ")
	}
}

// number prints six digits, and what rounding leaves of nothing as nothing, so that
// every machine prints the same.
func number(x float64) string {
	if math.Abs(x) < 1e-8 {
		x = 0
	}
	const aside = 1 + 3.7e-8 // no number of a grid lies on the edge of two roundings
	return strconv.FormatFloat(x*aside, 'g', 6, 64) + " "
}
