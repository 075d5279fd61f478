// `arrisline completions`: what a shell offers at the tab key, from the table of options and the table of
// words. Shown by tests/completions.py.
#include <algorithm>
#include <set>

#include "app/commands.h"
#include "app/inputs.h"
#include "app/options.h"
#include "text/vocabulary.h"
#include "wording/words.h"

namespace arrisline {
namespace {

/// A name for each thing that may stand somewhere, to branch by in a script.
std::string_view name_of(Takes takes) {
  switch (takes) {
    case Takes::nothing:
      return "nothing";
    case Takes::text:
      return "text";
    case Takes::profile:
      return "profile";
    case Takes::kit:
      return "kit";
    case Takes::job:
      return "job";
    case Takes::plan:
      return "plan";
    case Takes::tracing:
      return "tracing";
    case Takes::any_of_ours:
      return "ours";
    case Takes::sheet:
      return "sheet";
    case Takes::output:
      return "file";
    case Takes::folder:
      return "folder";
    case Takes::unit:
      return "unit";
    case Takes::paper:
      return "paper";
    case Takes::prefer:
      return "prefer";
    case Takes::side:
      return "side";
    case Takes::shell:
      return "shell";
    case Takes::kind_of_file:
      return "kind";
    case Takes::word:
      return "word";
  }
  return "";
}

constexpr Takes kAllTakes[] = {Takes::profile, Takes::kit,         Takes::job,          Takes::plan,
                               Takes::tracing, Takes::any_of_ours, Takes::sheet,        Takes::output,
                               Takes::folder,  Takes::unit,        Takes::paper,        Takes::prefer,
                               Takes::side,    Takes::shell,       Takes::kind_of_file, Takes::word};

std::string joined(const std::vector<std::string_view>& words, std::string_view between) {
  std::string out;
  for (const std::string_view word : words)
    out += (out.empty() ? "" : std::string(between)) + std::string(word);
  return out;
}

/// The words that may stand there, with those of the file formats.
std::vector<std::string_view> choices(Takes takes) {
  if (takes != Takes::word) return words_of(takes);
  std::set<std::string_view> words;
  for (const Word& word : vocabulary()) words.insert(word.word);
  return {words.begin(), words.end()};
}

std::string bash_script() {
  std::string out = R"(# What bash offers for arrisline at the tab key. Made by: arrisline completions bash

_arrisline_words() {
  local word
  for word in $1; do [[ $word == "$cur"* ]] && COMPREPLY+=("$word"); done
}

# Files with one of the endings, and folders to look into.
_arrisline_files() {
  local file ending
  compopt -o filenames 2>/dev/null
  while IFS= read -r file; do
    if [[ -d $file || $# -eq 0 ]]; then
      COMPREPLY+=("$file")
    else
      for ending in "$@"; do [[ $file == *."$ending" ]] && COMPREPLY+=("$file"); done
    fi
  done < <(compgen -f -- "$cur")
}

_arrisline() {
  local cur=${COMP_WORDS[COMP_CWORD]} before='' options='' takes='' place=''
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    _arrisline_words ')";
  out += joined(command_names(), " ");
  out += R"( --help --version'
    return
  fi
  before=${COMP_WORDS[COMP_CWORD - 1]}
  if [[ $cur == '=' ]]; then
    cur=''
  elif [[ $before == '=' ]]; then
    before=${COMP_WORDS[COMP_CWORD - 2]}
  fi
  case ${COMP_WORDS[1]} in
)";
  for (const CommandRow& command : command_table()) {
    std::vector<std::string_view> names;
    std::string values;
    for (const OptionRow& option : command.options) {
      names.push_back(option.name);
      if (!option.in_short.empty()) names.push_back(option.in_short);
      if (option.takes == Takes::nothing) continue;
      values += "        " + std::string(option.name);
      if (!option.in_short.empty()) values += " | " + std::string(option.in_short);
      values += ") takes=" + std::string(name_of(option.takes)) + " ;;\n";
    }
    names.push_back("--help");
    out += "    " + std::string(command.name) + ")\n      options='" + joined(names, " ") +
           "' place=" + std::string(name_of(command.place)) + "\n";
    if (!values.empty()) out += "      case $before in\n" + values + "      esac\n";
    out += "      ;;\n";
  }
  out += R"(  esac
  if [[ -z $takes && $cur == -* ]]; then
    _arrisline_words "$options"
    return
  fi
  case ${takes:-$place} in
)";
  for (const Takes takes : kAllTakes) {
    out += "    " + std::string(name_of(takes)) + ") ";
    const std::vector<std::string_view> words = choices(takes);
    if (takes == Takes::folder) {
      out += "_arrisline_files / ";  // no file ends so
    } else if (!words.empty()) {
      out += "_arrisline_words '" + joined(words, " ") + "' ";
    } else {
      const std::string endings = joined(endings_of(takes), " ");
      out += "_arrisline_files " + endings + (endings.empty() ? "" : " ");
    }
    out += ";;\n";
  }
  return out + "  esac\n}\n\ncomplete -F _arrisline arrisline\n";
}

/// What stands there, as zsh's _arguments asks for it; REQUIRES: something does.
std::string zsh_action(Takes takes) {
  std::string out = ":" + std::string(name_of(takes)) + ":";
  const std::vector<std::string_view> words = choices(takes);
  const std::string endings = joined(endings_of(takes), "|");
  if (takes == Takes::text) return out + " ";
  if (takes == Takes::folder) return out + "_files -/";
  if (!words.empty()) return out + "(" + joined(words, " ") + ")";
  return out + "_files" + (endings.empty() ? "" : " -g \"*.(" + endings + ")(-.)\"");
}

std::string zsh_script() {
  std::string out = R"(#compdef arrisline
# What zsh offers for arrisline at the tab key. Made by: arrisline completions zsh

_arrisline() {
  local context state state_descr line
  typeset -A opt_args
  _arguments -C '(- *)'{-h,--help}'[help]' '(- *)--version[the version]' '1:command:->command' '*::argument:->argument'
  case $state in
    command)
      local -a commands
      commands=(
)";
  for (const CommandRow& command : command_table())
    out += "        '" + std::string(command.name) + ":" + std::string(command.what) + "'\n";
  out += R"(      )
      _describe command commands
      ;;
    argument)
      case $words[1] in
)";
  for (const CommandRow& command : command_table()) {
    out += "        " + std::string(command.name) + ")\n          _arguments '(- *)'{-h,--help}'[help]'";
    for (const OptionRow& option : command.options) {
      const std::string name(option.name);
      const std::string value = option.takes == Takes::nothing ? "" : zsh_action(option.takes);
      const std::string what = "[" + std::string(option.what) + "]" + value + "'";
      const std::string assign = value.empty() ? "" : "=";
      out += " \\\n            ";
      if (option.in_short.empty()) {
        out += "'" + std::string(option.takes == Takes::sheet ? "*" : "") + name + assign + what;
      } else {
        const std::string in_short(option.in_short);
        out += "'(" + in_short + " " + name + ")'{" + in_short + "," + name + assign + "}'" + what;
      }
    }
    if (command.place != Takes::nothing)
      out += " \\\n            '" + std::string(command.many ? "*" : "1") + zsh_action(command.place) + "'";
    out += "\n          ;;\n";
  }
  return out +
         "      esac\n      ;;\n  esac\n}\n\nif [[ $funcstack[1] == _arrisline ]]; then\n  _arrisline "
         "\"$@\"\nelse\n"
         "  compdef _arrisline arrisline\nfi\n";
}

/// The part of a line of fish that says what may stand there.
std::string fish_values(Takes takes) {
  const std::vector<std::string_view> words = choices(takes);
  const auto& endings = endings_of(takes);
  if (takes == Takes::text) return " -x";
  if (takes == Takes::folder) return " -x -a '(__fish_complete_directories)'";
  if (!words.empty()) return " -x -a '" + joined(words, " ") + "'";
  if (endings.empty()) return " -r -F";
  return " -k -x -a '(__arrisline_files " + joined(endings, " ") + ")'";
}

std::string fish_script() {
  std::string out =
      R"(# What fish offers for arrisline at the tab key. Made by: arrisline completions fish

# Files with one of the endings, and folders to look into.
function __arrisline_files
    set -l begun (string unescape -- (commandline -ct | string replace -r '^--[a-z-]+=' ''))
    for file in $begun*
        if test -d $file
            echo $file/
        else
            for ending in $argv
                string match -q -- "*.$ending" $file; and echo $file
            end
        end
    end
end

complete -c arrisline -f
complete -c arrisline -s h -l help -d help
complete -c arrisline -n __fish_use_subcommand -l version -d 'the version'
)";
  for (const CommandRow& command : command_table())
    out += "complete -c arrisline -n __fish_use_subcommand -a " + std::string(command.name) + " -d '" +
           std::string(command.what) + "'\n";
  for (const CommandRow& command : command_table()) {
    const std::string begin =
        "complete -c arrisline -n '__fish_seen_subcommand_from " + std::string(command.name) + "'";
    out += "\n";
    for (const OptionRow& option : command.options) {
      out += begin;
      if (!option.in_short.empty()) out += " -s " + std::string(option.in_short.substr(1));
      out += " -l " + std::string(option.name.substr(2)) + " -d '" + std::string(option.what) + "'";
      if (option.takes != Takes::nothing) out += fish_values(option.takes);
      out += "\n";
    }
    if (command.place != Takes::nothing) out += begin + fish_values(command.place) + "\n";
  }
  return out;
}

}  // namespace

Outcome completions_command(const std::string& shell) {
  const std::string name = lower(shell);
  if (name == "bash") return {kDone, bash_script(), ""};
  if (name == "zsh") return {kDone, zsh_script(), ""};
  if (name == "fish") return {kDone, fish_script(), ""};
  const auto& shells = words_of(Takes::shell);
  return {kBadInput, "",
          usage_error("completions", "the shell is " + either(shells) + ", not " + quoted(shell) +
                                         suggestion(name, shells))};
}

}  // namespace arrisline
