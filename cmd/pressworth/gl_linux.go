//go:build cgo

package main

// The toolkit's OpenGL binding names one function of libGL, and so the system would load libGL, and with it the
// graphics driver's loader, at every start: also for a shell command on a machine that has neither. The function below
// stands in for it and opens libGL when the window first asks for it.

/*
#cgo LDFLAGS: -Wl,--as-needed -ldl
#include <dlfcn.h>
#include <stddef.h>

typedef void (*glProc)(void);

glProc glXGetProcAddress(const unsigned char *name) {
	static glProc (*real)(const unsigned char *);
	if (real == NULL) {
		void *lib = dlopen("libGL.so.1", RTLD_LAZY | RTLD_GLOBAL);
		if (lib != NULL) {
			*(void **)&real = dlsym(lib, "glXGetProcAddress");
		}
	}
	return real != NULL ? real(name) : NULL;
}
*/
import "C"
