# Cloths part by part, the edition of a label, and the record: washes, moves, a maker's own words.

import datetime
import django.db.models.deletion
import django.db.models.expressions
import django.db.models.functions.datetime
from django.db import migrations, models
from django.db.models.functions import TruncDate


def measured_when_entered(apps, schema_editor):
    """A panel from before counts as measured on the day it was entered."""
    panels = apps.get_model('inventory', 'Panel').objects
    panels.update(measured_on=TruncDate('created_at'))


class Migration(migrations.Migration):

    dependencies = [
        ('inventory', '0001_initial'),
        ('shared', '0001_initial'),
    ]

    operations = [
        migrations.CreateModel(
            name='AdviceOverride',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('created_at', models.DateTimeField(db_default=django.db.models.functions.datetime.Now(), editable=False)),
                ('withdrawn_at', models.DateTimeField(editable=False, null=True)),
                ('part', models.CharField(choices=[('wash', 'Washing'), ('dry', 'Drying'), ('press', 'Pressing'), ('interfacing', 'Interfacing'), ('marking', 'Marking'), ('cutting', 'Cutting'), ('holding', 'Holding'), ('needle', 'Needle'), ('thread', 'Thread'), ('stitch', 'Stitch'), ('edge', 'Edges')], max_length=12, verbose_name='Which recommendation')),
                ('text', models.CharField(max_length=300, verbose_name='What you will do')),
                ('reason', models.CharField(max_length=500, verbose_name='Why')),
                ('made_on', models.DateField(default=datetime.date.today, editable=False)),
            ],
            options={
                'ordering': ['-made_on', '-pk'],
            },
        ),
        migrations.CreateModel(
            name='StatusChange',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('created_at', models.DateTimeField(db_default=django.db.models.functions.datetime.Now(), editable=False)),
                ('status', models.CharField(choices=[('arrived', 'Arrived'), ('set-aside', 'Set aside'), ('washed', 'Washed'), ('pressed', 'Pressed'), ('ready', 'Ready to cut'), ('cut', 'Cut'), ('returned', 'Returned')], max_length=10)),
                ('changed_on', models.DateField(default=datetime.date.today)),
            ],
            options={
                'ordering': ['-changed_on', '-pk'],
            },
        ),
        migrations.CreateModel(
            name='WashEvent',
            fields=[
                ('id', models.BigAutoField(auto_created=True, primary_key=True, serialize=False, verbose_name='ID')),
                ('created_at', models.DateTimeField(db_default=django.db.models.functions.datetime.Now(), editable=False)),
                ('withdrawn_at', models.DateTimeField(editable=False, null=True)),
                ('washed_on', models.DateField(default=datetime.date.today, verbose_name='Washed on')),
                ('way', models.CharField(choices=[('hand', 'By hand'), ('machine-very-mild', 'Machine, very mild'), ('machine-mild', 'Machine, mild'), ('machine', 'Machine'), ('professional', 'By a professional cleaner')], max_length=20, verbose_name='How')),
                ('water_c', models.PositiveSmallIntegerField(blank=True, null=True, verbose_name='Water in °C')),
                ('along_before_mm', models.FloatField(blank=True, null=True)),
                ('along_after_mm', models.FloatField(blank=True, null=True)),
                ('across_before_mm', models.FloatField(blank=True, null=True)),
                ('across_after_mm', models.FloatField(blank=True, null=True)),
                ('text', models.CharField(blank=True, max_length=500, verbose_name='What you saw')),
            ],
            options={
                'ordering': ['-washed_on', '-pk'],
            },
        ),
        migrations.RemoveConstraint(
            model_name='fibreshare',
            name='fibre_once_a_garment',
        ),
        migrations.AddField(
            model_name='conditionnote',
            name='across_mm',
            field=models.FloatField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name='conditionnote',
            name='panel',
            field=models.ForeignKey(blank=True, null=True, on_delete=django.db.models.deletion.RESTRICT, related_name='condition_notes', to='inventory.panel'),
        ),
        migrations.AddField(
            model_name='conditionnote',
            name='up_mm',
            field=models.FloatField(blank=True, null=True),
        ),
        migrations.AddField(
            model_name='fibreshare',
            name='part',
            field=models.CharField(choices=[('shell', 'Shell'), ('lining', 'Lining'), ('trim', 'Trim')], default='shell', max_length=6),
        ),
        migrations.AddField(
            model_name='garment',
            name='label_edition',
            field=models.PositiveSmallIntegerField(blank=True, choices=[(2012, '2012'), (2023, '2023')], null=True, verbose_name='Edition of the label'),
        ),
        migrations.AddField(
            model_name='garment',
            name='lining_construction',
            field=models.CharField(blank=True, max_length=20, verbose_name='How the lining is made'),
        ),
        migrations.AddField(
            model_name='garment',
            name='trim_construction',
            field=models.CharField(blank=True, max_length=20, verbose_name='How the trim is made'),
        ),
        migrations.AddField(
            model_name='panel',
            name='measured_on',
            field=models.DateField(default=datetime.date.today, editable=False),
        ),
        migrations.AddField(
            model_name='panel',
            name='part',
            field=models.CharField(choices=[('shell', 'Shell'), ('lining', 'Lining'), ('trim', 'Trim')], default='shell', max_length=6, verbose_name='Cut from the'),
        ),
        migrations.AddField(
            model_name='photo',
            name='note',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.CASCADE, related_name='photos', to='inventory.conditionnote'),
        ),
        migrations.AlterField(
            model_name='conditionnote',
            name='text',
            field=models.CharField(max_length=500, verbose_name='What you see'),
        ),
        migrations.AddConstraint(
            model_name='conditionnote',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('across_mm__isnull', True), ('up_mm__isnull', True)), models.Q(('across_mm__isnull', False), ('up_mm__isnull', False)), _connector='OR'), name='note_place_whole'),
        ),
        migrations.AddConstraint(
            model_name='conditionnote',
            constraint=models.CheckConstraint(condition=models.Q(('across_mm__isnull', True), ('panel__isnull', False), _connector='OR'), name='note_place_on_panel'),
        ),
        migrations.AddConstraint(
            model_name='fibreshare',
            constraint=models.UniqueConstraint(fields=('garment', 'part', 'fibre'), name='fibre_once_a_garment_part'),
        ),
        migrations.AddConstraint(
            model_name='fibreshare',
            constraint=models.CheckConstraint(condition=models.Q(('part__in', ['shell', 'lining', 'trim'])), name='fibre_part_known'),
        ),
        migrations.AddConstraint(
            model_name='garment',
            constraint=models.CheckConstraint(condition=models.Q(('label_edition', None), ('label_edition__in', [2012, 2023]), _connector='OR'), name='garment_edition_known'),
        ),
        migrations.AddConstraint(
            model_name='panel',
            constraint=models.CheckConstraint(condition=models.Q(('part__in', ['shell', 'lining', 'trim'])), name='panel_part_known'),
        ),
        migrations.AddField(
            model_name='adviceoverride',
            name='garment',
            field=models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='overrides', to='inventory.garment'),
        ),
        migrations.AddField(
            model_name='adviceoverride',
            name='made_by',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.RESTRICT, related_name='+', to='shared.member'),
        ),
        migrations.AddField(
            model_name='adviceoverride',
            name='withdrawn_by',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.RESTRICT, related_name='+', to='shared.member'),
        ),
        migrations.AddField(
            model_name='adviceoverride',
            name='workshop',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.CASCADE, related_name='+', to='shared.workshop'),
        ),
        migrations.AddField(
            model_name='statuschange',
            name='garment',
            field=models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='status_changes', to='inventory.garment'),
        ),
        migrations.AddField(
            model_name='statuschange',
            name='workshop',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.CASCADE, related_name='+', to='shared.workshop'),
        ),
        migrations.AddField(
            model_name='washevent',
            name='garment',
            field=models.ForeignKey(on_delete=django.db.models.deletion.CASCADE, related_name='wash_events', to='inventory.garment'),
        ),
        migrations.AddField(
            model_name='washevent',
            name='made_by',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.RESTRICT, related_name='+', to='shared.member'),
        ),
        migrations.AddField(
            model_name='washevent',
            name='withdrawn_by',
            field=models.ForeignKey(editable=False, null=True, on_delete=django.db.models.deletion.RESTRICT, related_name='+', to='shared.member'),
        ),
        migrations.AddField(
            model_name='washevent',
            name='workshop',
            field=models.ForeignKey(editable=False, on_delete=django.db.models.deletion.CASCADE, related_name='+', to='shared.workshop'),
        ),
        migrations.AddConstraint(
            model_name='adviceoverride',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('withdrawn_at__isnull', True), ('withdrawn_by__isnull', True)), models.Q(('withdrawn_at__isnull', False), ('withdrawn_by__isnull', False)), _connector='OR'), name='adviceoverride_withdrawn_whole'),
        ),
        migrations.AddConstraint(
            model_name='adviceoverride',
            constraint=models.CheckConstraint(condition=models.Q(('part__in', ['wash', 'dry', 'press', 'interfacing', 'marking', 'cutting', 'holding', 'needle', 'thread', 'stitch', 'edge'])), name='override_part_known'),
        ),
        migrations.AddConstraint(
            model_name='adviceoverride',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('text', ''), _negated=True), models.Q(('reason', ''), _negated=True)), name='override_has_words_and_reason'),
        ),
        migrations.AddConstraint(
            model_name='adviceoverride',
            constraint=models.UniqueConstraint(condition=models.Q(('withdrawn_at', None)), fields=('garment', 'part'), name='override_one_stands'),
        ),
        migrations.AddConstraint(
            model_name='statuschange',
            constraint=models.CheckConstraint(condition=models.Q(('status__in', ['arrived', 'set-aside', 'washed', 'pressed', 'ready', 'cut', 'returned'])), name='change_status_known'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('withdrawn_at__isnull', True), ('withdrawn_by__isnull', True)), models.Q(('withdrawn_at__isnull', False), ('withdrawn_by__isnull', False)), _connector='OR'), name='washevent_withdrawn_whole'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(('way__in', ['hand', 'machine-very-mild', 'machine-mild', 'machine', 'professional'])), name='wash_way_known'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(('water_c__isnull', True), models.Q(('water_c__gte', 0), ('water_c__lte', 95)), _connector='OR'), name='wash_water'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('along_after_mm__isnull', True), ('along_before_mm__isnull', True)), models.Q(('along_after_mm__isnull', False), ('along_before_mm__isnull', False)), _connector='OR'), name='wash_along_both'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(('along_before_mm__isnull', True), models.Q(('along_before_mm__gte', 1), ('along_before_mm__lte', 10000)), _connector='OR'), name='wash_along_length'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(('along_before_mm__isnull', True), models.Q(('along_after_mm__gte', django.db.models.expressions.CombinedExpression(models.F('along_before_mm'), '*', models.Value(0.2))), ('along_after_mm__lte', django.db.models.expressions.CombinedExpression(models.F('along_before_mm'), '*', models.Value(1.5)))), _connector='OR'), name='wash_along_likely'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(models.Q(('across_after_mm__isnull', True), ('across_before_mm__isnull', True)), models.Q(('across_after_mm__isnull', False), ('across_before_mm__isnull', False)), _connector='OR'), name='wash_across_both'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(('across_before_mm__isnull', True), models.Q(('across_before_mm__gte', 1), ('across_before_mm__lte', 10000)), _connector='OR'), name='wash_across_length'),
        ),
        migrations.AddConstraint(
            model_name='washevent',
            constraint=models.CheckConstraint(condition=models.Q(('across_before_mm__isnull', True), models.Q(('across_after_mm__gte', django.db.models.expressions.CombinedExpression(models.F('across_before_mm'), '*', models.Value(0.2))), ('across_after_mm__lte', django.db.models.expressions.CombinedExpression(models.F('across_before_mm'), '*', models.Value(1.5)))), _connector='OR'), name='wash_across_likely'),
        ),
        migrations.RunPython(measured_when_entered, migrations.RunPython.noop),
    ]
