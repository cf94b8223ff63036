// Every widget, for the screens.
#pragma once

#include "ui/button.h"
#include "ui/icon.h"
#include "ui/keypad.h"
#include "ui/ladder.h"
#include "ui/layout.h"
#include "ui/picture.h"
#include "ui/row.h"
#include "ui/semantics.h"
#include "ui/share.h"
#include "ui/state.h"
#include "ui/stepper.h"
#include "ui/table.h"
#include "ui/text.h"
#include "ui/text_field.h"
#include "ui/theme.h"
