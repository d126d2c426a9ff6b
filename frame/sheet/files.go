package sheet

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// A File is a file to write: its name without a folder, and what it holds.
type File struct {
	Name string
	Data []byte
}

// Files returns the document as files: "sheet.html", and each picture by its own
// name with the ending ".svg".
func (d Document) Files() ([]File, error) {
	page, err := d.HTML()
	if err != nil {
		return nil, err
	}
	out := []File{{"sheet.html", []byte(page)}}
	for _, c := range d.Cards {
		for _, b := range c.Blocks {
			if p, ok := b.(Picture); ok {
				out = append(out, File{p.Name + ".svg", []byte(p.SVG)})
			}
		}
	}
	return out, nil
}

// disk holds the calls that change a folder, so that a test can let each fail.
type disk struct {
	lstat  func(string) (fs.FileInfo, error)
	temp   func(dir, pattern string) (string, error)
	write  func(name string, data []byte) error
	rename func(from, to string) error
	chmod  func(string, fs.FileMode) error
	clear  func(string) error
}

var realDisk = disk{os.Lstat, os.MkdirTemp, writeFile, os.Rename, os.Chmod, os.RemoveAll}

// writeFile writes a new file down to the disk, so that a full one is noticed.
func writeFile(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}

// WriteFiles writes all files into a folder or none. A folder that does not exist
// is made, in one that does; in one that exists, files of the same names are
// replaced and all others left alone. After an error the folder is as it was
// before. The error of a full disk, of a folder that may not be written and of
// something in the way, which is no plain file, is the file system's own, or
// matches fs.ErrExist.
func WriteFiles(dir string, files []File) error { return realDisk.writeAll(dir, files) }

func (k disk) writeAll(dir string, files []File) error {
	seen := map[string]bool{}
	for _, f := range files {
		low := strings.ToLower(f.Name) // some file systems see no difference
		if f.Name == "" || f.Name != filepath.Base(f.Name) || !filepath.IsLocal(f.Name) || strings.ContainsAny(f.Name, `/\:`) || f.Name == "." {
			return fmt.Errorf("a file's name %q: %w", f.Name, fs.ErrInvalid)
		}
		if seen[low] {
			return fmt.Errorf("two files of the name %q: %w", f.Name, fs.ErrInvalid)
		}
		seen[low] = true
	}
	if dir == "" {
		return fmt.Errorf("a folder without a name: %w", fs.ErrInvalid)
	}
	dir = filepath.Clean(dir)
	info, err := k.lstat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return k.make(dir, files)
	case err != nil:
		return err
	case info.Mode()&fs.ModeSymlink != 0:
		to, err := filepath.EvalSymlinks(dir)
		if err != nil {
			return err
		}
		if info, err = k.lstat(to); err != nil {
			return err
		}
		dir = to
	}
	if !info.IsDir() {
		return fmt.Errorf("%s is in the way, a folder is wanted: %w", dir, fs.ErrExist)
	}
	return k.replace(dir, files)
}

// fill writes the files into a new folder beside or in another.
func (k disk) fill(in, pattern string, files []File) (string, error) {
	tmp, err := k.temp(in, pattern)
	if err != nil {
		return "", err
	}
	for _, f := range files {
		if err := k.write(filepath.Join(tmp, f.Name), f.Data); err != nil {
			return "", errors.Join(err, k.clear(tmp))
		}
	}
	return tmp, nil
}

// make makes the folder under another name and gives it its own when all files
// are in it.
func (k disk) make(dir string, files []File) error {
	tmp, err := k.fill(filepath.Dir(dir), "."+filepath.Base(dir)+"-*", files)
	if err != nil {
		return err
	}
	if err = k.chmod(tmp, 0o755); err == nil {
		err = k.rename(tmp, dir)
	}
	if err != nil {
		return errors.Join(err, k.clear(tmp))
	}
	return nil
}

// A move is a rename that can be taken back.
type move struct{ from, to string }

// replace moves files that are there aside and new ones in; at the first failure
// it takes every move back.
func (k disk) replace(dir string, files []File) error {
	there := make([]bool, len(files))
	for i, f := range files {
		name := filepath.Join(dir, f.Name)
		switch info, err := k.lstat(name); {
		case errors.Is(err, fs.ErrNotExist):
		case err != nil:
			return err
		case !info.Mode().IsRegular():
			return fmt.Errorf("%s is in the way, it is no plain file: %w", name, fs.ErrExist)
		default:
			there[i] = true
		}
	}
	tmp, err := k.fill(dir, ".new-*", files)
	if err != nil {
		return err
	}
	old, err := k.temp(tmp, "old-*")
	var done []move
	do := func(from, to string) {
		if err == nil {
			if err = k.rename(from, to); err == nil {
				done = append(done, move{from, to})
			}
		}
	}
	for i, f := range files {
		name := filepath.Join(dir, f.Name)
		if there[i] {
			do(name, filepath.Join(old, f.Name))
		}
		do(filepath.Join(tmp, f.Name), name)
	}
	if err == nil {
		if err = k.clear(tmp); err != nil {
			return fmt.Errorf("all files are written, but the folder of the old ones stays: %w", err)
		}
		return nil
	}
	for i := len(done) - 1; i >= 0; i-- {
		if back := k.rename(done[i].to, done[i].from); back != nil {
			return errors.Join(err, fmt.Errorf("the files of before are kept in %s: %w", old, back))
		}
	}
	return errors.Join(err, k.clear(tmp))
}
