// Mutants takes a seeded sample of the mutants that a mutation tester finds in
// packages, runs each package's own tests against each of them, and against what
// lives the pinned numbers of all functions and of whole reports, and prints those
// that live then. It works on overlays, so that the source is never touched.
//
//	go run ./.ci/mutants -n 200 -seed 1 ./float ./ice > lived.txt
//	go run ./.ci/mutants -again lived.txt ./float
//
// Mutants of lines that no test reaches are tried as well; one that does not
// compile is left out and the next is taken; one that the tests never end on is
// caught. Exit status 1 if a package's tests catch less than -floor of its sample.
package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
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
	again := flag.String("again", "", "file with the output of an earlier run, of which only what lived is tried")
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
		share, err := try(strings.TrimSuffix(dir, "/"), *n, *seed, *workers, only)
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
func try(dir string, n int, seed uint64, workers int, only []byte) (float64, error) {
	all, err := find(dir)
	if err != nil {
		return 0, err
	}
	if only != nil {
		all = slices.DeleteFunc(all, func(m mutant) bool { return !bytes.Contains(only, []byte(m.name(dir)+": ")) })
	}
	rand.New(rand.NewPCG(seed, 0)).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	start := time.Now()
	for _, tests := range sets(dir) {
		if out, f := tests.run("", 10*time.Minute); f != lived {
			return 0, fmt.Errorf("the tests of %s do not pass as they are: %s\n%s", tests.dir, f, out)
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
	take := func() (mutant, bool) {
		mu.Lock()
		defer mu.Unlock()
		if next == len(all) || valid()+running >= n {
			return mutant{}, false
		}
		next, running = next+1, running+1
		return all[next-1], true
	}
	for range workers {
		wg.Go(func() {
			for m, ok := take(); ok; m, ok = take() {
				f, text, err := m.run(dir, limit)
				if err != nil {
					log.Fatal(err)
				}
				mu.Lock()
				running--
				total[f]++
				if f == lived {
					fmt.Printf("%s: %s\n", m.name(dir), text)
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
		dir, valid(), len(all), total[caught], total[pinned], total[endless], total[lived], total[invalid], 100*share, seed, time.Since(start).Round(time.Second))
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

// run tests the package with the mutant in place and returns its fate and its line.
func (m mutant) run(dir string, limit time.Duration) (fate, string, error) {
	path, err := filepath.Abs(filepath.Join(dir, m.file))
	if err != nil {
		return "", "", err
	}
	source, err := os.ReadFile(path)
	if err != nil {
		return "", "", err
	}
	lines := bytes.SplitAfter(source, []byte("\n"))
	line := lines[m.Line-1]
	changed, err := m.change(line)
	if err != nil {
		return "", "", fmt.Errorf("%s:%d:%d %s: %w", path, m.Line, m.Column, m.Type, err)
	}
	text := strings.TrimSpace(string(line))
	lines[m.Line-1] = changed

	scratch, err := os.MkdirTemp("", "mutant")
	if err != nil {
		return "", "", err
	}
	defer os.RemoveAll(scratch)
	file, overlay := filepath.Join(scratch, "mutant.go"), filepath.Join(scratch, "overlay.json")
	replace, err := json.Marshal(map[string]map[string]string{"Replace": {path: file}})
	if err != nil {
		return "", "", err
	}
	if err := errors.Join(os.WriteFile(file, bytes.Join(lines, nil), 0o644), os.WriteFile(overlay, replace, 0o644)); err != nil {
		return "", "", err
	}
	for i, tests := range sets(dir) {
		switch _, f := tests.run(overlay, limit); {
		case f == lived:
		case i == 0:
			return f, text, nil
		default:
			return pinned, text, nil
		}
	}
	return lived, text, nil
}

// change returns the line with the mutant's operator in place of the source's.
func (m mutant) change(line []byte) ([]byte, error) {
	rest := line[m.Column-1:]
	var from, to token.Token
	for a, b := range changes[m.Type] {
		if bytes.HasPrefix(rest, []byte(a.String())) && len(a.String()) > len(from.String()) || from == token.ILLEGAL && bytes.HasPrefix(rest, []byte(a.String())) {
			from, to = a, b
		}
	}
	if from == token.ILLEGAL {
		return nil, fmt.Errorf("no operator there: %s", bytes.TrimSpace(line))
	}
	return slices.Concat(line[:m.Column-1], []byte(to.String()), rest[len(from.String()):]), nil
}

// A set is tests of a package, all or some.
type set struct{ dir, names string }

// sets returns the tests of the package in dir and after them those that compare the
// functions of all packages, and the reports, with what they gave before.
func sets(dir string) []set {
	all := []set{{dir, ""}, {"./internal/hostile", "^TestPinned$"}}
	if name := filepath.Base(dir); name != "dock" && name != "sheet" {
		all = append(all, set{"./frame/dock", "^Test(Pinned|Golden|ReportText)$"})
	}
	return all
}

// run runs them, short, and returns lived if they pass.
func (s set) run(overlay string, limit time.Duration) (string, fate) {
	ctx, cancel := context.WithTimeout(context.Background(), limit+time.Minute)
	defer cancel()
	args := []string{"test", "-short", "-failfast", "-count=1", "-vet=off", "-timeout", limit.String()}
	if s.names != "" {
		args = append(args, "-run", s.names)
	}
	if overlay != "" {
		args = append(args, "-overlay", overlay)
	}
	c := exec.CommandContext(ctx, "go", append(args, s.dir)...)
	c.WaitDelay = time.Second
	out, err := c.CombinedOutput()
	switch text := string(out); {
	case err == nil:
		return text, lived
	case strings.Contains(text, "[build failed]"):
		return text, invalid
	case strings.Contains(text, "panic: test timed out") || ctx.Err() != nil:
		return text, endless
	default:
		return text, caught
	}
}
