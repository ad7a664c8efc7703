// complete.h - what the shell may offer for the word that is being typed.
#pragma once

#include "larderloop/cli/runtime.h"

#include <string>
#include <vector>

namespace larderloop::cli {

// `words`: the command line after the program's name; the last one is being typed and may be empty. Prints one candidate a line, with a
// tab and what it stands for: commands, options, words, and what the book has. Without a book, or with one that cannot be read, it offers
// the rest and says nothing. Always 0.
int complete(const std::vector<std::string>& words, Runtime& runtime);

}  // namespace larderloop::cli
