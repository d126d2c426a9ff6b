package sheet

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tree returns everything in a folder: files by their text, folders by a slash.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, _ := filepath.Rel(dir, path)
		switch {
		case d.IsDir():
			out[rel] = "/"
		case d.Type()&fs.ModeSymlink != 0:
			out[rel] = "link"
		default:
			data, err := os.ReadFile(path)
			out[rel] = string(data)
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

var threeFiles = []File{{"a.html", []byte("new a")}, {"b.svg", []byte("new b")}, {"c.csv", []byte("new c")}}

// before makes a folder with a file that will be replaced and one that will not.
func before(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"a.html": "old a", "c.csv": "old c", "notes.txt": "mine"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func TestWriteFiles(t *testing.T) {
	dir := before(t)
	if err := WriteFiles(dir, threeFiles); err != nil {
		t.Fatal(err)
	}
	want := map[string]string{".": "/", "a.html": "new a", "b.svg": "new b", "c.csv": "new c", "notes.txt": "mine"}
	if diff := cmp.Diff(want, tree(t, dir)); diff != "" {
		t.Error(diff)
	}
	fresh := filepath.Join(t.TempDir(), "out")
	for range 2 { // made, then written again
		if err := WriteFiles(fresh, threeFiles); err != nil {
			t.Fatal(err)
		}
		delete(want, "notes.txt")
		if diff := cmp.Diff(want, tree(t, fresh)); diff != "" {
			t.Error(diff)
		}
	}
	if got := tree(t, filepath.Dir(fresh)); len(got) != 5 {
		t.Errorf("something is left beside the folder: %v", got)
	}
	if info, err := os.Stat(fresh); err != nil || info.Mode().Perm() != 0o755 {
		t.Errorf("the folder's mode: %v, %v", info.Mode(), err)
	}
	link := filepath.Join(t.TempDir(), "link")
	if err := os.Symlink(dir, link); err != nil {
		t.Fatal(err)
	}
	if err := WriteFiles(link, []File{{"d", nil}}); err != nil {
		t.Error(err)
	}
	if _, ok := tree(t, dir)["d"]; !ok {
		t.Error("a link to a folder is not followed")
	}
}

// TestWriteFilesRefuses: what is in the way, and names that are none.
func TestWriteFilesRefuses(t *testing.T) {
	dir := before(t)
	if err := os.Mkdir(filepath.Join(dir, "b.svg"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("notes.txt", filepath.Join(dir, "link")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("nowhere", filepath.Join(dir, "dangling")); err != nil {
		t.Fatal(err)
	}
	was := tree(t, dir)
	for name, c := range map[string]struct {
		dir   string
		files []File
		want  error
	}{
		"folder in the way of a file": {dir, threeFiles, fs.ErrExist},
		"link in the way of a file":   {dir, []File{{"link", nil}}, fs.ErrExist},
		"file in the way":             {filepath.Join(dir, "a.html"), threeFiles, fs.ErrExist},
		"link that leads nowhere":     {filepath.Join(dir, "dangling"), threeFiles, fs.ErrNotExist},
		"file on the way":             {filepath.Join(dir, "a.html", "out"), threeFiles, syscall.ENOTDIR},
		"no folder above":             {filepath.Join(dir, "none", "out"), threeFiles, fs.ErrNotExist},
		"name with a folder":          {dir, []File{{"x/y", nil}}, fs.ErrInvalid},
		"name going up":               {dir, []File{{"..", nil}}, fs.ErrInvalid},
		"name of the folder":          {dir, []File{{".", nil}}, fs.ErrInvalid},
		"no folder":                   {"", threeFiles, fs.ErrInvalid},
		"no name":                     {dir, []File{{"", nil}}, fs.ErrInvalid},
		"one name twice":              {dir, []File{{"x", nil}, {"X", nil}}, fs.ErrInvalid},
	} {
		if err := WriteFiles(c.dir, c.files); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
		if diff := cmp.Diff(was, tree(t, dir)); diff != "" {
			t.Errorf("%s changed the folder: %s", name, diff)
		}
	}
}

// TestWriteFilesFails lets every single call to the disk fail in turn, as on a
// full disk, and finds the folder as it was before.
func TestWriteFilesFails(t *testing.T) {
	full := func(countdown *int) disk {
		k := realDisk
		hit := func() bool { *countdown--; return *countdown == -1 }
		k.lstat = func(name string) (fs.FileInfo, error) {
			if hit() {
				return nil, fs.ErrPermission
			}
			return os.Lstat(name)
		}
		k.temp = func(dir, pattern string) (string, error) {
			if hit() {
				return "", syscall.ENOSPC
			}
			return os.MkdirTemp(dir, pattern)
		}
		k.write = func(name string, data []byte) error {
			if hit() {
				os.WriteFile(name, data[:1], 0o600) // a part gets through
				return syscall.ENOSPC
			}
			return writeFile(name, data)
		}
		k.rename = func(from, to string) error {
			if hit() {
				return syscall.ENOSPC
			}
			return os.Rename(from, to)
		}
		k.chmod = func(name string, mode fs.FileMode) error {
			if hit() {
				return fs.ErrPermission
			}
			return os.Chmod(name, mode)
		}
		return k
	}
	for name, start := range map[string]func(t *testing.T) (parent, dir string){
		"new":    func(t *testing.T) (string, string) { d := before(t); return d, filepath.Join(d, "out") },
		"exists": func(t *testing.T) (string, string) { d := before(t); return d, d },
	} {
		failed := 0
		for k := 0; ; k++ {
			parent, dir := start(t)
			was := tree(t, parent)
			left := k
			err := full(&left).writeAll(dir, threeFiles)
			if err == nil {
				break
			}
			failed++
			if !errors.Is(err, syscall.ENOSPC) && !errors.Is(err, fs.ErrPermission) {
				t.Errorf("%s, call %d: %v", name, k, err)
			}
			if diff := cmp.Diff(was, tree(t, parent)); diff != "" {
				t.Errorf("%s, call %d changed the folder: %s", name, k, diff)
			}
		}
		if failed < 7 {
			t.Errorf("%s: only %d calls could fail", name, failed)
		}
	}
}

// TestWriteFilesCannotGoBack: where even the way back fails, the error says where
// the old files are, and they are there.
func TestWriteFilesCannotGoBack(t *testing.T) {
	dir := before(t)
	k := realDisk
	n := 0
	k.rename = func(from, to string) error {
		if n++; n > 2 {
			return syscall.EIO
		}
		return os.Rename(from, to)
	}
	err := k.writeAll(dir, threeFiles)
	if !errors.Is(err, syscall.EIO) || !strings.Contains(err.Error(), "are kept in") {
		t.Fatal(err)
	}
	kept := 0
	for name, text := range tree(t, dir) {
		if strings.Contains(name, "old-") && text == "old a" {
			kept++
		}
	}
	if kept != 1 {
		t.Errorf("the old file is gone: %v", tree(t, dir))
	}
	k = realDisk
	k.clear = func(string) error { return syscall.EIO }
	if err := k.writeAll(before(t), threeFiles); !errors.Is(err, syscall.EIO) || !strings.Contains(err.Error(), "all files are written") {
		t.Error(err)
	}
}
