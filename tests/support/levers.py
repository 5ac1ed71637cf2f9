"""The lever of a switch on the plan, and whether what it stands at is answered."""


def answered(editor) -> bool:
    """Whether the figures are those of the positions as they are now."""
    answer = editor.solving.answer
    return answer is not None and dict(answer.positions) == editor.session.positions


def lever(editor):
    """Where S1 is on the screen."""
    part = editor.session.plan.parts["S1"]
    return editor.window.plan_view.px(part.x_mm, part.y_mm)
