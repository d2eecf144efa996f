package seal_test

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"

	"stonewrit/report/seal"
)

func TestLock(t *testing.T) {
	t.Setenv("HOME", t.TempDir())
	t.Setenv("XDG_CONFIG_HOME", os.Getenv("HOME"))
	data := sample(t, nil)
	const password = "Laternenstiege-7ß"
	locked, err := seal.Lock(data, password)
	if err != nil {
		t.Fatal(err)
	}
	if bytes.Contains(locked, []byte(sampleUUID)) {
		t.Error("the UUID stands open in it")
	}
	if _, err := seal.Open(locked, ""); !errors.Is(err, seal.ErrLocked) {
		t.Errorf("without password: got %v, want ErrLocked", err)
	}
	if _, err := seal.Open(locked, "wrong"); !errors.Is(err, seal.ErrPassword) {
		t.Errorf("wrong password: got %v, want ErrPassword", err)
	}
	doc, err := seal.Open(locked, password)
	if err != nil {
		t.Fatal(err)
	}
	if found := doc.Check(); len(found) > 0 || doc.Number != sampleNumber || !doc.Locked {
		t.Errorf("opened: %s, locked %v, found %q", doc.Number, doc.Locked, found)
	}
	for _, unfit := range []string{"", "two words", "a\nline"} {
		if _, err := seal.Lock(data, unfit); !errors.Is(err, seal.ErrUnfit) {
			t.Errorf("password %q: got %v, want ErrUnfit", unfit, err)
		}
	}
	if list, _ := os.ReadDir(os.Getenv("HOME")); len(list) > 0 {
		t.Errorf("it left %v in the home folder", list)
	}
	file := t.TempDir() + "/locked.pdf"
	write(t, file, locked)
	if said := tool(t, nil, "qpdf", "--show-encryption", "--password="+password, file); !strings.Contains(said, "R = 6\n") || !strings.Contains(said, "AESv3") || !strings.Contains(said, "extract for accessibility: allowed") || !strings.Contains(said, "modify anything: not allowed") {
		t.Errorf("qpdf says:\n%s\nwant revision 6 with AESv3 (AES of 256 bits: ISO 32000-2, 7.6.4), and that nothing may be changed", said)
	}
	if said := tool(t, nil, "pdftotext", file, "-"); !strings.Contains(said, "Incorrect password") {
		t.Errorf("poppler without the password says %q", said)
	}
}
