// Mutants takes a seeded sample of the mutants that a mutation tester finds in
// packages, runs each package's own tests against each of them, and against what
// lives the pinned numbers of all functions and of whole reports, and prints those
// that live then. The source is never touched: an overlay holds every function of the
// sample once as it is and once for each of its mutants, and the environment says which
// runs, so that the tests are built once.
//
//	go run ./.ci/mutants -n 200 -seed 1 ./float ./ice > lived.txt
//	go run ./.ci/mutants -again lived.txt ./float
//
// tries what lived again on the package's own tests alone.
// Mutants of lines that no test reaches are tried as well; one that does not
// compile is left out and the next is taken; one that the tests never end on is
// caught. Exit status 1 if a package's tests catch less than -floor of its sample.
package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"flag"
	"fmt"
	"go/token"
	"log"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"
)

const tester = "github.com/go-gremlins/gremlins/cmd/gremlins@v0.6.0"

// mutant is one change of one operator.
type mutant struct {
	Type         string
	Line, Column int
	file         string // from the package's folder
}

// changes gives the operator that each kind of mutant puts in place of another.
var changes = map[string]map[token.Token]token.Token{
	"ARITHMETIC_BASE": {
		token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL, token.REM: token.MUL,
	},
	"CONDITIONALS_BOUNDARY": {
		token.GTR: token.GEQ, token.GEQ: token.GTR, token.LSS: token.LEQ, token.LEQ: token.LSS,
	},
	"CONDITIONALS_NEGATION": {
		token.EQL: token.NEQ, token.NEQ: token.EQL,
		token.LEQ: token.GTR, token.GTR: token.LEQ, token.LSS: token.GEQ, token.GEQ: token.LSS,
	},
	"INCREMENT_DECREMENT": {token.INC: token.DEC, token.DEC: token.INC},
	"INVERT_NEGATIVES":    {token.SUB: token.ADD},
}

// fate is what became of a mutant.
type fate string

const (
	caught  fate = "caught"
	pinned  fate = "caught by a pinned number alone"
	endless fate = "endless"
	lived   fate = "lived"
	invalid fate = "does not compile"
)

func main() {
	log.SetFlags(0)
	n := flag.Int("n", 200, "mutants a package")
	seed := flag.Uint64("seed", 1, "seed of the sample")
	floor := flag.Float64("floor", 0.85, "share of the sample that the tests must catch")
	workers := flag.Int("workers", 1, "mutants tried at a time")
	again := flag.String("again", "", "file with the output of an earlier run: only what lived is tried, on the package's own tests")
	names := flag.String("run", "", "with -again, these of the package's tests alone")
	flag.Parse()
	var only []byte
	if *again != "" {
		var err error
		if only, err = os.ReadFile(*again); err != nil {
			log.Fatal(err)
		}
	}
	status := 0
	for _, dir := range flag.Args() {
		share, err := try(strings.TrimSuffix(dir, "/"), *n, *seed, *workers, only, *names)
		if err != nil {
			log.Fatalf("%s: %v", dir, err)
		}
		if share < *floor {
			status = 1
		}
	}
	os.Exit(status)
}

// try runs the sample of one package, or what is named in only, and returns the share
// that was caught.
func try(dir string, n int, seed uint64, workers int, only []byte, names string) (float64, error) {
	all, err := find(dir)
	if err != nil {
		return 0, err
	}
	if only != nil {
		all = slices.DeleteFunc(all, func(m mutant) bool { return !bytes.Contains(only, []byte(m.name(dir)+": ")) })
	}
	found := len(all)
	rand.New(rand.NewPCG(seed, 0)).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	all = all[:min(len(all), n+n/5+10)] // some do not compile
	tests := sets(dir)
	if only != nil {
		tests = []set{{dir: dir, names: names}} // the others have seen them
	}
	b, err := build(dir, tests, all)
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(b.scratch)
	start := time.Now()
	for i, s := range tests {
		if out, f := b.test(i, 0, 10*time.Minute); f != lived {
			return 0, fmt.Errorf("the tests of %s do not pass as they are: %s\n%s", s.dir, f, out)
		}
	}
	limit := 30*time.Second + 5*time.Since(start)

	var (
		mu    sync.Mutex
		wg    sync.WaitGroup
		next  int
		total = map[fate]int{}
	)
	valid := func() int { return total[caught] + total[pinned] + total[endless] + total[lived] }
	running := 0
	take := func() (int, bool) {
		mu.Lock()
		defer mu.Unlock()
		if next == len(all) || valid()+running >= n {
			return 0, false
		}
		next, running = next+1, running+1
		return next, true
	}
	for range workers {
		wg.Go(func() {
			for id, ok := take(); ok; id, ok = take() {
				m := all[id-1]
				f := b.fate(id, limit)
				mu.Lock()
				running--
				total[f]++
				if f == lived {
					fmt.Printf("%s: %s\n", m.name(dir), b.line(m))
				}
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	if valid() == 0 {
		return 1, nil
	}
	share := 1 - float64(total[lived])/float64(valid())
	fmt.Printf("%s: %d of %d mutants tried: %d caught, %d by a pinned number alone, %d endless, %d lived, %d do not compile: %.1f %% caught, seed %d, %s\n",
		dir, valid(), found, total[caught], total[pinned], total[endless], total[lived], total[invalid], 100*share, seed, time.Since(start).Round(time.Second))
	return share, nil
}

// find lists the mutants of the package in dir, and of no package below it.
func find(dir string) ([]mutant, error) {
	scratch, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(scratch)
	list := filepath.Join(scratch, "list.json")
	if out, err := exec.Command("go", "run", tester, "unleash", dir, "--dry-run", "--output", list).CombinedOutput(); err != nil {
		return nil, fmt.Errorf("%w\n%s", err, out)
	}
	data, err := os.ReadFile(list)
	if err != nil {
		return nil, err
	}
	var found struct {
		Files []struct {
			Name      string `json:"file_name"`
			Mutations []mutant
		}
	}
	if err := json.Unmarshal(data, &found); err != nil {
		return nil, err
	}
	var all []mutant
	for _, f := range found.Files {
		if strings.Contains(f.Name, "/") {
			continue
		}
		for _, m := range f.Mutations {
			m.file = f.Name
			all = append(all, m)
		}
	}
	slices.SortFunc(all, func(a, b mutant) int {
		return cmp.Or(cmp.Compare(a.file, b.file), cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column), cmp.Compare(a.Type, b.Type))
	})
	// The same change under two names is one mutant.
	return slices.CompactFunc(all, func(a, b mutant) bool {
		return a.file == b.file && a.Line == b.Line && a.Column == b.Column && (a.Type == "ARITHMETIC_BASE" || b.Type == "ARITHMETIC_BASE")
	}), nil
}

// name says where the mutant is and of what kind.
func (m mutant) name(dir string) string {
	return fmt.Sprintf("%s/%s:%d:%d %s", strings.TrimPrefix(dir, "./"), m.file, m.Line, m.Column, m.Type)
}

// operators returns the operator that the source has there, and the mutant's.
func (m mutant) operators(rest []byte) (from, to string, err error) {
	for a, b := range changes[m.Type] {
		if bytes.HasPrefix(rest, []byte(a.String())) && len(a.String()) > len(from) {
			from, to = a.String(), b.String()
		}
	}
	if from == "" {
		return "", "", fmt.Errorf("%s:%d:%d %s: no operator there", m.file, m.Line, m.Column, m.Type)
	}
	return from, to, nil
}

// A set is tests of a package, all or some.
type set struct{ dir, names, skip string }

// sets returns the tests of the package in dir, the quick ones of a slow package by
// themselves first, and after them those that compare the functions of all packages, and
// the reports, with what they gave before.
func sets(dir string) []set {
	const quick = "^Test(Pinned|Golden|ReportText|Pages|Draw)$"
	whole := set{dir: "./frame/dock", names: quick}
	functions := set{dir: "./internal/hostile", names: "^TestPinned$"}
	switch filepath.Base(dir) {
	case "dock": // no twisted plans, no reports on many cores: they find panics and races
		return []set{whole, {dir: dir, skip: quick + "|Fuzz|Mutated|ReportEnds|Trials|DemosReport"}, functions}
	case "sheet":
		return []set{{dir: dir, names: quick}, {dir: dir, skip: quick + "|Fuzz"}}
	}
	return []set{{dir: dir}, functions, whole}
}
